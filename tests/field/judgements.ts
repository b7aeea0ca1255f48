// Every finding over the procedures in `procedures/`, judged as somebody from the shop would who has the manual beside it: right
// or wrong, and why. Those judged wrong were reported once, and must not be again.

export interface Judgement {
  readonly procedure: string;
  /** The number of the step; of a declaration or a statement at the head of something, empty. */
  readonly step: string;
  readonly code: string;
  /** How the place begins, as marked. */
  readonly at: string;
  readonly verdict: string;
  readonly why: string;
}

/** In the order of the texts: procedure, step, code, place, verdict, why. */
const TABLE = `
accumulator | - | names.unused | Nitrogen | right | Nothing is driven by the nitrogen, so no step is checked against it; the writer thinks it is.
accumulator | - | trace.no-source | 6 ± 1 N·m | right | The author says it is his own torque, and cites nothing for it.
accumulator | - | trace.no-source | 9 ± 1 N·m | right | The author says it is his own torque, and cites nothing for it.
accumulator | 1.1 | wording.many-actions | chock | right | Stopping the engine and chocking the wheels are done at two places.
accumulator | 2.4 | wording.many-actions | open | right | The kit is screwed on first; that the valve is opened deserves a tick of its own.
accumulator | 3.1 | wording.many-actions | unscrew | right | Closing, letting off and unscrewing have an order on which a face depends.
battery-service | - | trace.no-source | 9 ± 1 N·m | right | The clamp torque is the author's own, and cites nothing.
battery-service | 1.1 | wording.many-actions | take | right | All switches and the key: two acts, and one of them is forgotten.
battery-service | 1.3 | order.not-proved | remove PositiveClamp | right | The voltmeter is in the kit, and nobody holds it to the open leads before the second one comes off.
bearing-in-oil | - | trace.no-source | 2 .. 33 µm | right | The fit is from the author's memory, and cites nothing.
bearing-in-oil | 1.3 | safety.missing | lubricate Shaft | right | The oil is declared to harm skin, and goes on by hand a task before the only warning.
bearing-in-oil | 2.1 | limits.too-cool-to-fit | 100 .. 120 °C | right | 100 °C less 60 s at 0.15 K/s is 91 °C: 55.4 µm less 7.8 µm of the shaft at 30 °C leaves 47.6 of the 53 µm wanted.
bearing-in-oil | 2.2 | safety.no-second-check | critical | right | The step is critical, and only the gap is looked at, a task later.
brake-drum | - | trace.no-source | 240 ± 20 N·m | right | The torque of the wheel nuts is the author's own, and cites nothing.
brake-drum | 1.3 | wording.many-actions | put | right | Lifted on the jack and standing on the stand is the difference between two and no crushed hands.
brake-drum | 1.7 | wording.not-imperative | Two | right | It tells what two people do, not the reader what to do.
brake-drum | 1.8 | wording.many-actions | draw | right | Backing the shoes off comes first, at another place.
brake-drum | 1.8 | safety.missing | remove Drum | right | The dust is declared as a hazard of its own, and the warning stands under fumes.
brake-drum | 1.9 | safety.missing | clean Shoe[all] | right | The shoes carry the same dust, and no statement has its name.
brake-drum | 2.3 | limits.tool-range | measure OutOfRound "difference between t | wrong | The limit is on how far four readings lie apart, and the micrometer is not asked to read 2.29 mm. Mended in the rule.
brake-drum | 3.2 | wording.not-imperative | Two | right | It tells what two people do, not the reader what to do.
brake-drum | 3.6 | wording.many-actions | back | right | Setting until it drags and backing off are two acts with two ends.
brake-drum | 3.7 | wording.many-actions | lower | right | The stand has to be out before the axle comes down.
coupling-alignment | 2.1 | wording.many-actions | tighten | right | One bolt loosened, measured at, and tightened again are three acts in one tick.
coupling-alignment | 3.1 | wording.long-sentence | Clamp the gauge to the motor hub, with i | right | 25 words, with the zero at the end of them.
coupling-alignment | 3.1 | wording.many-actions | set | right | Clamping the gauge and setting its zero are two acts.
coupling-alignment | 3.5 | order.unsupported | loosen FootBolt[all] | wrong | The motor stands on its feet. There was no word for it; now it says “stands”.
coupling-alignment | 3.5 | safety.missing | loosen FootBolt[all] | wrong | Nothing falls: the same motor.
coupling-alignment | 3.7 | wording.many-actions | push | right | Lifting and shimming are written as one after the other; were they meant at once, “while” would say so.
engine-lift | 2.2 | wording.many-actions | wait | right | Slack out, lift, wait: three acts, and the wait is what is left out.
engine-lift | 2.3 | safety.no-second-check | critical | right | An engine of 910 kg on its supports, and nobody is named who looks before the sling goes.
flange-joint | 1.6 | safety.missing | lubricate Bolt[all] | right | The paste is declared to harm skin, and the task warns of pressure only.
flange-joint | 3.1 | limits.undertorque | 30 %, 60 %, 100 % of BoltTorque | right | 140 N·m at 0.15 on M20 is 46.7 kN, a third of the proof load; a pipefitter would ask the data sheet.
flange-joint | 3.1 | safety.no-second-check | critical | right | The hold stands in the next step, which the critical one does not wait for.
flange-joint | 3.2 | limits.undertorque | 150 ± 10 N·m | right | The last pass goes to the same light torque.
lockwire | - | trace.no-source | 9 ± 1 N·m | right | The torque is the author's own, and cites nothing.
lockwire | - | safety.no-avoidance | warning eye, cutting "Ends of cut wire f | right | It says what happens and what to wear, not how to hold the end that is cut.
lockwire | 1 | wording.many-actions | throw | right | A cut end that is not thrown away at once is what pricks the next one.
lockwire | 2 | wording.passive | should be checked | right | Whether it is an order, and whose, is left open.
lockwire | 2 | trace.no-source | 9 ± 1 N·m | right | The step states the torque again and cites nothing; neither the procedure nor the part does.
lockwire | 3 | safety.instruction-in-note | caution overtorque "Do not go over the u | right | It forbids something; that belongs behind “avoid”, and what goes wrong is not said.
lockwire | 4 | wording.long-sentence | Run the wire so that it pulls the screws | right | 33 words with three acts in them.
motor-lockout | - | trace.no-source | 4 ± 0.5 N·m | right | The torque is the author's own, and cites nothing.
motor-lockout | 1.7 | wording.many-actions | put | right | Trying the button and putting it back to OFF: forgetting the second starts the motor later.
motor-lockout | 2.7 | trace.no-source | 4 ± 0.5 N·m | right | The step cites nothing, and “based on” the lockout rule gives no torque.
pump-packing | 1 | wording.many-actions | close | right | The pump and two valves stand at three places.
pump-packing | 3 | wording.many-actions | pull | right | Nuts first, gland then: two acts.
pump-packing | 3 | order.not-proved | remove Gland | right | The supply is proved dead, the water at 6 bar behind the gland is not.
pump-packing | 3 | safety.missing | remove Gland | right | No word in the whole text warns of water at 6 bar behind the gland.
pump-packing | 4 | wording.vague | properly | right | Nobody knows when a stuffing box is cleaned properly.
pump-packing | 5 | wording.passive | is checked | right | It may have been checked already; by whom is open.
pump-packing | 10 | wording.not-imperative | Gland | right | A label without a verb.
pump-packing | 11 | wording.not-imperative | a | right | “Then a flat more on each” has no verb.
pump-packing | 12 | wording.many-actions | start | right | Valves and motor are two acts, and the second has to wait for the first.
pump-packing | 13 | wording.long-sentence | Let it leak freely for 10 to 15 minutes | right | 23 words with two acts and two ends.
ring-gear | - | trace.no-source | 0.25 .. 0.45 mm | right | The fit is the author's own, and cites nothing.
ring-gear | - | safety.no-avoidance | warning cutting "The edges of new teeth | right | Gloves are named, how to hold the ring is not.
ring-gear | 1.4 | safety.no-second-check | critical | right | The ring cannot be turned once it is cold, and nobody is named who looks.
ring-gear | 2.8 | safety.no-second-check | critical | right | Only the run-out is held for the inspector; the torque is nobody's but the mechanic's.
ring-gear | 2.10 | wording.number-drift | 150 mm | wrong | 150 mm from the center is where the run-out is read, not what it may be. Mended in the rule.
solvent-and-air | - | names.unused | ShopAir | right | Blowing dry is in own words; nothing is checked against the air's 7 bar.
solvent-and-air | - | names.unused | Tub | right | No step washes in it.
solvent-and-air | - | safety.protection | warning fire, fumes "The solvent burns a | right | Fumes, and nothing to wear; the manual asks for goggles and gloves.
solvent-and-air | 1 | wording.many-actions | scrub | right | Four acts, three of them seen.
solvent-and-air | 1 | wording.vague | as necessary | right | How clean is clean is left to each.
solvent-and-air | 1 | safety.missing | clean Housing | right | The solvent is declared to harm skin and eyes, and the warning is of fire and fumes.
solvent-and-air | 2 | wording.passive | are washed | right | Whether it is an order is left open.
solvent-and-air | 4 | wording.passive | must not be spun | right | It does not say to whom; “Do not spin” would.
solvent-and-air | 5 | wording.many-actions | replace | right | Looking and replacing are two acts.
thread-insert | - | trace.no-source | 18 ± 2 N·m | right | The torque is the author's own, and cites nothing.
thread-insert | 3 | wording.long-sentence | Put a drop of cutting oil on the tap and | right | 27 words, and the turning back at the end of them.
thread-insert | 3 | wording.many-actions | cut | right | Oil and cutting are two acts.
thread-insert | 3 | safety.missing | lubricate Housing | right | The oil is declared to harm skin, and the warning is of eyes and cuts.
thread-insert | 4 | wording.many-actions | wash | right | Brushing the chips out and washing are two acts.
thread-insert | 6 | safety.no-second-check | critical | right | The hold stands in the next step, which the critical one does not wait for.
torque-adapter | - | safety.idle | warning crush "A wrench that slips throw | right | No fact tells that a wrench slips; “raises crush” at the step is the place to say it, and the warning then holds there.
torque-adapter | 2.1 | safety.missing | clean Frame | right | The cleaner is declared to harm skin, and no statement says so.
v-belts | - | trace.no-source | 70 ± 7 N·m | right | The torque is the author's own, and cites nothing.
v-belts | 4 | wording.many-actions | push | right | Slackening and pushing are two acts.
v-belts | 4 | order.unsupported | loosen SlideBolt[all] | wrong | The motor stands on its slide. There was no word for it; now it says “stands”.
v-belts | 4 | safety.missing | loosen SlideBolt[all] | wrong | Nothing falls: the same motor.
v-belts | 5 | wording.vague | If necessary | right | When a groove is worn out is left to each.
v-belts | 8 | wording.vague | properly | right | How closely the edge has to touch is left to each.
`;

export const JUDGEMENTS: readonly Judgement[] = TABLE.trim().split("\n").map(judgement);

function judgement(line: string): Judgement {
  const [procedure = "", step = "", code = "", at = "", verdict = "", why = ""] = line.split(" | ");
  return { procedure, step: step === "-" ? "" : step, code, at, verdict, why };
}
