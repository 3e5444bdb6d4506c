import styles from "./mapping-form.module.css";

const [WIDTH, HEIGHT] = [56, 16];

/** The few values that a preview holds as a small line; they stand in words beside it. */
export function SparkLine({ values }: { values: readonly number[] }) {
  if (values.length < 2) return null;
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const x = (i: number) => (i / (values.length - 1)) * (WIDTH - 2) + 1;
  const y = (value: number) => (high === low ? HEIGHT / 2 : HEIGHT - 2 - ((value - low) / (high - low)) * (HEIGHT - 4));
  const points = values.map((value, i) => `${x(i).toFixed(1)},${y(value).toFixed(1)}`).join(" ");
  return (
    <svg className={styles.spark} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT} aria-hidden="true">
      <polyline points={points} />
    </svg>
  );
}
