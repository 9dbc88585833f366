/** How many digits a PIN for a shared tablet has. In a file of its own: screens need it without the schemas. Common practice, no source. */
export const LEAST_PIN = 4
export const MOST_PIN = 6
