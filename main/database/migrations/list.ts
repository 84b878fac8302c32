/** Every migration in order. A new one is added at the end, with a test from the version before. */
import type { Migration } from '../migrate.ts'
import { foundation } from './0001-foundation.ts'
import { askedLender } from './0002-asked-lender.ts'
import { marks } from './0003-marks.ts'
import { firstLetters } from './0004-first-letters.ts'
import { sets } from './0005-sets.ts'
import { plan } from './0006-plan.ts'
import { weight } from './0007-weight.ts'
import { hangRules } from './0008-hang-rules.ts'
import { movements } from './0009-movements.ts'
import { sectionHang } from './0010-section-hang.ts'
import { condition } from './0011-condition.ts'
import { conditionPhotos } from './0012-condition-photos.ts'
import { light } from './0013-light.ts'
import { removedRows } from './0014-removed-rows.ts'
import { loans } from './0015-loans.ts'
import { insured } from './0016-insured.ts'
import { conditionBack } from './0017-condition-back.ts'
import { numbers } from './0018-numbers.ts'
import { loanTerms } from './0019-loan-terms.ts'
import { climate } from './0020-climate.ts'
import { damage } from './0021-damage.ts'
import { receipts } from './0022-receipts.ts'
import { climateChain } from './0023-climate-chain.ts'
import { editReason } from './0024-edit-reason.ts'
import { borne } from './0025-borne.ts'
import { lightChain } from './0026-light-chain.ts'
import { movedParts } from './0027-moved-parts.ts'
import { conditionFaces } from './0028-condition-faces.ts'
import { identification } from './0029-identification.ts'
import { termWords } from './0030-term-words.ts'
import { plannedMoves } from './0031-planned-moves.ts'

export const migrations: readonly Migration[] = [
  foundation,
  askedLender,
  marks,
  firstLetters,
  sets,
  plan,
  weight,
  hangRules,
  movements,
  sectionHang,
  condition,
  conditionPhotos,
  light,
  removedRows,
  loans,
  insured,
  conditionBack,
  numbers,
  loanTerms,
  climate,
  damage,
  receipts,
  climateChain,
  editReason,
  borne,
  lightChain,
  movedParts,
  conditionFaces,
  identification,
  termWords,
  plannedMoves,
]
