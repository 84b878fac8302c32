/**
 * The questions that only a lender can answer, as a text to send: which work, what the list says word for word, what is
 * asked. The rule it keeps: nothing of the catalogue goes in that the lender did not write or need not know.
 */
export interface LetterQuestion {
  readonly number: string
  readonly title: string
  readonly maker: string
  readonly list: string
  readonly row: number
  readonly column: string
  readonly text: string
  readonly question: string
  readonly kind: string
  readonly options: readonly string[]
}

/** One lender's letter as plain text, lists in the order given, questions numbered throughout. Empty for none. */
export function letterText(lender: string, questions: readonly LetterQuestion[]): string {
  if (questions.length === 0) return ''
  const lines = [
    lender === '' ? 'To the lender' : `To ${lender}`,
    '',
    questions.length === 1
      ? 'One thing in your list is not clear to us. Please tell us:'
      : `${questions.length} things in your list are not clear to us. Please tell us:`,
  ]
  for (const [i, question] of questions.entries()) {
    const work = [question.number, question.title || 'without title', question.maker].filter(word => word !== '')
    const written = question.text === '' ? 'nothing' : question.text.replace(/\s*\n\s*/g, ' / ')
    const column = question.column === '' ? '' : `, ${question.column}`
    lines.push(
      '',
      `${i + 1}. ${work.join(', ')}`,
      `   Your list ${question.list}, row ${question.row}${column}, says: ${written}`,
      `   ${question.question}`,
    )
    if (question.options.length > 0) lines.push(`   It could be: ${question.options.join('; ')}.`)
    lines.push('   Your answer:')
  }
  return `${lines.join('\n')}\n`
}
