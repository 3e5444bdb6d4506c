/** What a promise leaves out on purpose, beside a meter that leaves nothing out. A test holds the size of each part. */
export const LEFT_OUT_OF_A_PROMISE =
  "A promise leaves out what this record cannot show: hours before people come, walls that stay warmer at night, zones whose state their trends do not tell, and outdoor air that does more for warmer return air. A meter counts them, so that a proof may lie above the promise.";
