/** Money as it is shown: CHF 1 200 000, EUR 45 000.50. The code stands first, thousands are parted by thin spaces. */
import { THIN_SPACE } from '../measure/format.ts'
import { type Amount, exponentOf } from './currency.ts'

/** The figure alone, with all its decimals, so that figures below one another can be compared. */
export function writeFull({ minor, currency }: Amount): string {
  const exponent = exponentOf(currency)
  const digits = String(Math.abs(minor)).padStart(exponent + 1, '0')
  const whole = digits.slice(0, digits.length - exponent).replace(/\B(?=(?:\d{3})+$)/gu, THIN_SPACE)
  return `${minor < 0 ? '\u2212' : ''}${whole}${exponent === 0 ? '' : `.${digits.slice(-exponent)}`}`
}

/** The figure alone; decimals are written where they are not nought, all of them then. */
export function writeFigure(amount: Amount): string {
  return writeFull(amount).replace(/\.0+$/u, '')
}

/** With its code, which a no-break space keeps beside it. */
export function writeAmount(amount: Amount): string {
  return `${amount.currency}\u00a0${writeFigure(amount)}`
}
