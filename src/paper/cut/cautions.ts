/**
 * The usual cautions, written into every cutting file that can carry words and said before one is made (common practice
 * of workshops; that PVC gives off hydrogen chloride when it burns is textbook chemistry). ASCII, since old machines
 * read nothing else.
 */
export const cautions: readonly string[] = [
  'Never leave a laser unattended, and keep an extinguisher at hand.',
  'Run the fume extraction all the time.',
  'NO PVC (vinyl) film or laminate in a laser: it gives off hydrogen chloride, which harms lungs and machine.',
  "The machine's manual, the material's data sheet and your local rules come before anything written here.",
];
