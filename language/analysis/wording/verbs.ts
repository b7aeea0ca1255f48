// The verbs that shop instructions begin with, in their base form, as closed lists: a tagger does not know that “torque”,
// “shim” or “heat” are verbs there. Our own lists, from the work that this language speaks of. Knows no sentence.
import { wordList } from "./word-list.ts";

/** Words that are hardly ever anything but verbs where a sentence or a part of one begins. */
const PLAIN_VERBS: ReadonlySet<string> = wordList(`
  abrade accept activate actuate adapt add adhere adjust advance advise affix agitate align allow anneal announce anodise
  anodize answer apply arrange ascertain ask assemble assign assist assume attach attempt avoid await
  become begin bend bring burnish
  calculate calibrate call carry carve chill choke choose circle cleanse collapse collect combine compare compensate complete
  compress conduct confirm connect consider consult contain continue convert cool crimp
  de-energise de-energize de-ice deactivate deburr decide decontaminate decrease deenergise deenergize deflate degas degrease
  dehumidify delete deliver demagnetise demagnetize demonstrate depress depressurise depressurize describe deselect destroy
  detach detect determine diagnose dilute disable disassemble discard disconnect disengage disinfect dismantle dismount dispense
  dispose dissolve distribute divide do drag
  ease eject elevate eliminate employ enable enclose energise energize engage engrave enlarge ensure enter equalise equalize
  erase erect establish evacuate evaluate examine exclude execute expand expel expose extend extinguish extract
  fabricate fasten fetch fill find finish fit fix flatten follow forbid furnish
  gather get give glue go grab grasp grind
  hang harden hoist hold
  identify ignite ignore illuminate immerse impregnate include increase indicate inflate inform inhibit initiate inject inspect
  instal install instruct insulate interchange interconnect invert investigate isolate
  keep kneel knock
  lap lay learn leave let liberate locate lockwire look loosen lubricate
  magnetise magnetize maintain make manufacture measure melt mend mix modify moisten monitor multiply
  neutralise neutralize notify
  observe obtain offer omit operate organise organize orient orientate
  passivate peel peen perform permit pick place plumb pour preheat prepare preserve preset pressurise pressurize prevent prise
  prohibit protect prove provide pry pull purge push put
  quench
  raise re-engage re-install re-prime re-tighten re-torque realign ream reapply reassemble reattach rebalance recalibrate
  receive recharge recheck reclaim recommission reconnect record recover rectify recycle redo reduce reengage refer refill refit
  refresh refuse regrease regrind regulate reheat reinforce reinsert reinspect reinstall reinstate reject relieve relocate
  relubricate remain remeasure remember remount remove renew reopen repack repaint repeat replace replenish reposition require
  rerun reseal reseat restart restore restrain restrict resume retain retest retighten retorque retract retrieve reuse revert
  review rewind rewire rinse rotate rub
  sandblast save say scrape scrub secure see seek select send separate settle shake sharpen ship shorten shut shut-off simulate
  sit skim slacken slide smear smooth snug soak solder solve sort specify spread squeeze stand stay steer stencil stick stir
  stow straighten stretch submerge submit substitute subtract suck surround suspend swab swap sweep swing synchronise
  synchronize
  take tear tell terminate thaw throw tighten tilt touch treat try turn
  uncap uncouple uncover undo unfasten unfold unhook uninstall unload unlock unpack unplug unroll unscrew unseal untie unwind
  unwrap update upend use utilise utilize
  validate ventilate verify
  wait warn wash weigh wet whip wind wipe wire-lock withdraw wrap wring write
`);

/** Words that are as often nouns or adjectives: “Torque the nuts.”, “Torque is 40 N·m.”, “lock washer”. What follows decides. */
const NOUN_VERBS: ReadonlySet<string> = wordList(`
  access anchor approach arm attend
  back bag balance bar base bead belt blank blast bleed bleed-off block blow bolt bond boost bore bottom brace bracket brake
  braze bridge brush buff bump bundle burn burr bypass
  cable cap center centre chain chamfer change channel charge chart chase check chock chuck clamp clean clear clip close coat
  coil color colour contact control copy core correct count couple cover crack crank cross cure cut cycle
  damp date detail dip direct discharge document dowel drain draw dress drift drill drip drive drop dry dump dust
  earth edge empty etch exchange exercise exhaust
  face fan feather feed feel file film filter finger flag flange flare flip float flow flush focus fold form free freeze fuel
  fuse
  gap gas gauge gear grade grease grip ground group guard guide
  halt hammer hand hand-tighten handle head heat heat-treat highlight hinge hook
  index insert
  jack jog join joint
  key kit
  label latch leak-check leak-test letter level lever lift light limit line link list load lock log lower lube
  machine maneuver manoeuvre mark mask master match mate mesh meter mill motor mount move
  nail neutral nip notch note number
  oil open order outline overhaul overlap
  pack page paint pair park pass patch pay pin pinch pivot plan plane plate play plug point polish pop position powder power
  press pressure-test prime print probe process proof-test pump punch
  quote
  rack ratchet rate reach read rear reference relay release repair report reset rest return reverse rig rivet rock roll route
  run
  safety sample sand scale scan score scrap scratch screen screw scribe seal search seat section service set shackle shape
  shield shift shim short shot-peen show sign silence site size skip sleeve sling slip slot snap space spin splice split sponge
  spot spray spring square stack stagger stain stake stamp start station steady steam step stock stone stop store strap strike
  string strip stroke stud supply support surface switch
  tab tack tag talk tap tape taper tare target tension test thread tie time tip top torque torque-check touch-up trace track trail
  train transfer transport trap trim trip tube tune twist
  vacuum vent view visit
  walk warm watch wax wear wedge weld wheel wire work
  zero
`);

/** Whether a word, in small letters, is a verb's base form and hardly ever anything else. */
export function isPlainVerb(word: string, ofTheShop: ReadonlySet<string> = NONE): boolean {
  return PLAIN_VERBS.has(word) || ofTheShop.has(word);
}

/** Whether a word, in small letters, is the base form of a verb, and a noun or adjective as well. */
export function isNounVerb(word: string): boolean {
  return NOUN_VERBS.has(word);
}

/** Whether a word, in small letters, is the base form of a verb that an instruction may begin with. */
export function isBaseForm(word: string, ofTheShop: ReadonlySet<string> = NONE): boolean {
  return isPlainVerb(word, ofTheShop) || isNounVerb(word);
}

const NONE: ReadonlySet<string> = new Set();
