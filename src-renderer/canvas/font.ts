/** The typeface of what is written on a drawing; drawings are drawn again once it is there. */
export const CHART_FONT = "'Source Sans 3', sans-serif";
