/** Colours of the sheets: ink on white, one vermilion for the line, one green and one amber, each beside a shape. */
export const ink = {
  paper: '#FFFFFF',
  ink: '#1F2224',
  ink2: '#4B4F52',
  ink3: '#66655F',
  line: '#B9B4A8',
  hairline: '#DCD6C8',
  snapped: '#D2452B',
  fits: '#2E6E4E',
  settle: '#8F5A00',
} as const
