/**
 * Ultraviolet as a meter shows it: for each lumen, 12 µW/lm, or on the surface, 0.6 mW/m². Without a unit it is
 * µW/lm, as most meters of museums have it (common practice, no source).
 */
import { readNumber, skipBlanks } from './number.ts'

export type VioletRead =
  | { readonly ok: true; readonly of: { readonly uv?: number; readonly uvArea?: number } }
  | { readonly ok: false; readonly message: string }

/** Reads one figure; nothing where nothing is written. */
export function readViolet(text: string): VioletRead {
  const whole = text.trim()
  if (whole === '') return { ok: true, of: {} }
  const bad = {
    ok: false,
    message: `“${whole}” is no figure of ultraviolet. Write it like 12 µW/lm or 0.6 mW/m².`,
  } as const
  const read = readNumber(whole, 0)
  if (read === undefined) return bad
  if (read.doubt !== undefined)
    return { ok: false, message: `“${whole}” may have thousands or decimals. Write it without a mark.` }
  const unit = whole.slice(skipBlanks(whole, read.end)).replaceAll(/\s/gu, '').toLowerCase()
  const figure = read.num / read.den
  if (unit === '' || /^[µμu]w(?:\/|per)(?:lm|lumen)$/u.test(unit)) return { ok: true, of: { uv: figure } }
  if (/^mw(?:\/|per)(?:m²|m2|sqm)$/u.test(unit)) return { ok: true, of: { uvArea: figure } }
  return /^[µμu]w\/cm(?:²|2)$/u.test(unit) ? { ok: true, of: { uvArea: figure * 10 } } : bad
}
