/** C7, staff time for cold reports in cooling-season occupied hours: reports · hours each · labour price. The hours are the building's own: there is no default. */
export const complaintCost = (i: { reports: number; hoursEach: number; labourPricePerHour: number }): number =>
  i.reports * i.hoursEach * i.labourPricePerHour;
