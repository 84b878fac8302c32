/** Temperatures: t/°C = (t/°F − 32)/1.8 (NIST SP 811, B.8, "degree Fahrenheit"); a span of 1 K is one of 1.8 °F. */
export const FAHRENHEIT_IN_KELVIN = 1.8

export const celsius = (fahrenheit: number): number => (fahrenheit - 32) / FAHRENHEIT_IN_KELVIN
export const fahrenheit = (degrees: number): number => degrees * FAHRENHEIT_IN_KELVIN + 32
