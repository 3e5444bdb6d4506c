/** 2025-07-01T12:00:00Z, a Tuesday: the time that stands still in tests. */
export const TEST_NOW = 1_751_371_200_000;
