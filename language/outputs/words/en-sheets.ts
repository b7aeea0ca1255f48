// The fixed words of the sheets beside the checklist: trainee, assessor, kit, the order of work, DITA. Knows no format.

export const enSheets = {
  /** The trainee's sheet. */
  trainee: {
    title: (title: string): string => `${title} – trainee’s sheet`,
    gap: (number: number): string => `(${number}) ________`,
    answers: "Answers to the gaps",
    gapNumber: "Gap",
    answer: "Answer",
    askedBelow: "asked for in the steps",
    filledBy: "Filled in by",
    trainee: "Trainee",
  },
  /** The assessor's sheet. */
  assessor: {
    title: (title: string): string => `${title} – assessment`,
    observed: "What is to be seen",
    unprompted: "Done unprompted",
    prompted: "Done when prompted",
    notDone: "Not done",
    critical: (text: string): string => `${text} (critical)`,
    wears: (what: string): string => `Wears: ${what}.`,
    writesDown: (what: string): string => `Writes down: ${what}.`,
    result: "Result",
    sum: "Sum",
    outOf: "Out of",
    criticalUnprompted: "Critical actions done unprompted",
    people: "Person assessed, assessor, date",
    rule: (critical: number): string =>
      critical === 0
        ? "Passed when no action was left undone."
        : "Passed when every critical action was done unprompted and no action was left undone. One critical action prompted or not done: not passed.",
    share: "Which share of the other actions must be done unprompted, the training programme says.",
  },
  /** What a torque wrench is set to, where that is not the torque itself. */
  wrench: {
    atFastener: (several: boolean): string =>
      several ? "The torques are those at the fastener." : "The torque is that at the fastener.",
    set: (wrench: string, settings: readonly string[], arm: string | null): string =>
      `Set ${wrench} to ${settings.join(", then ")}${arm === null ? "" : `, which holds for its arm of ${arm} alone`}.`,
    setFor: (fastener: string, wrench: string, settings: readonly string[], arm: string | null): string =>
      `For ${fastener}, set ${wrench} to ${settings.join(", then ")}${arm === null ? "" : `, which holds for its arm of ${arm} alone`}.`,
    /** Behind the torque of a round. */
    round: (setting: string): string => `, set ${setting}`,
    forArm: (wrench: string, arm: string): string =>
      `What ${wrench} is to be set to stands with each round, and holds for its arm of ${arm} alone.`,
    workOut: (wrench: string): string => `Work out what ${wrench} is to be set to with its own arm.`,
    item: (item: string, settings: readonly string[]): string => `${item}: set ${settings.join(", then ")}.`,
    itemFor: (item: string, fastener: string): string => `${item}, for ${fastener}`,
    itemUnknown: (item: string): string => `${item}: no setting, since the crib does not say its arm.`,
  },

  /** The kit list. */
  kit: {
    title: (title: string): string => `${title} – kit list`,
    doses: (amount: string, times: number): string => (times === 1 ? amount : `${amount}, ${times} times`),
    doseFor: (amount: string, what: string): string => `${amount} for ${what}`,
    inAll: (amount: string): string => `${amount} in all`,
    fresh: "New",
    open: "Options are left open: what any choice of them needs is listed.",
    once: "For one time through. Work that is done again after a failed check needs more.",
  },

  /** The order of work, drawn. */
  diagram: {
    title: (title: string): string => `${title} – order of work`,
    start: "Start",
    end: "End",
    hold: (roles: string): string => `Hold for ${roles}`,
    key: "Key",
    step: "a step",
    critical: "a critical step",
    holdPoint: "a hold point: nothing further before it is signed",
    back: "back to be done again",
  },

  /** Of DITA, where the form has a place for it. */
  dita: {
    /** How to avoid a hazard where the text does not say it. */
    noAvoidance: "The procedure does not say how. Ask before you start.",
    inCase: (heading: string): string => `${heading} `,
    tick: (label: string): string => `☐ ${label}`,
  },
};
