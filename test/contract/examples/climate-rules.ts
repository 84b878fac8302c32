/** The house rules of the air of rooms as nobody has changed them, written out. */
const bizot = 'Bizot Green Protocol, 2014; from memory'

function rule(
  key: string,
  value: number,
  says: string,
  unit: string,
  bounds: readonly [number, number],
  source: string,
) {
  return {
    key,
    group: 'Climate',
    value,
    default: value,
    says,
    reason: 'Where a lender asks for more, give the room limits of its own.',
    unit,
    least: bounds[0],
    most: bounds[1],
    choices: [],
    source,
    since: '',
    by: '',
    changed: false,
  }
}

const spanOfHumidity = '±10 % in 24 hours, of the Bizot Green Protocol, 2014; from memory'
const spanOfCelsius = '±2 K, short fluctuations of class AA of the ASHRAE handbook’s museum chapter; from memory'

export const climateRuleRows = [
  {
    ...rule(
      'climateJoin',
      2,
      'Times beyond a limit are told as one where no more than so many readings’ time lies between them.',
      '',
      [0, 100],
      'two usual steps of the logger; common practice, no source',
    ),
    reason: 'A value that trembles about a limit leaves it hundreds of times. How long it was beyond stays exact.',
  },
  rule('climateHumidityLow', 40, 'Relative humidity of a room is not below this.', '%', [0, 100], bizot),
  rule('climateHumidityHigh', 60, 'Relative humidity of a room is not above this.', '%', [0, 100], bizot),
  rule(
    'climateHumidityChange',
    20,
    'Within any 24 hours relative humidity spans no more than this.',
    '%',
    [1, 100],
    spanOfHumidity,
  ),
  rule('climateCelsiusLow', 16, 'Temperature of a room is not below this.', '°C', [-40, 80], bizot),
  rule('climateCelsiusHigh', 25, 'Temperature of a room is not above this.', '°C', [-40, 80], bizot),
  rule(
    'climateCelsiusChange',
    4,
    'Within any 24 hours temperature spans no more than this.',
    '°C',
    [0.5, 50],
    spanOfCelsius,
  ),
]
