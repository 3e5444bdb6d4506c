/** The one definition of overcooling; every degree-hour, share and cost of it follows from this sentence. */
export const OVERCOOLING_DEFINITION =
  "Overcooling is occupied time in the cooling season, with outdoor air at or above the supply air temperature, in which the air of a zone is colder than the building's target zone air temperature. It is measured in degree-hours (K·h): kelvins below the target times hours.";

/**
 * Default target zone air temperature of the cooling season [°C]. Preference votes from air-conditioned offices in
 * summer balance near 22.3 °C (21.6 to 22.9) and do not support 24.5 °C without fans (ASHRAE Global Thermal Comfort
 * Database II): 23 is the warm end of what occupants' own votes bear out.
 */
export const DEFAULT_TARGET_ZONE_AIR_TEMP_C = 23;
