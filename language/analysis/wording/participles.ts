// Past participles: the irregular ones as a closed list, the others by their ending. Knows no sentence.
import { wordList } from "./word-list.ts";

/** Whether a word, in small letters, can be the past participle of a verb that says what is done to something. */
export function isParticiple(word: string): boolean {
  return IRREGULAR.has(word) || (/^[a-z-]{2,}ed$/.test(word) && !NO_PARTICIPLES.has(word));
}

const IRREGULAR = wordList(`
  begun bent blown bound broken brought built burnt cast caught chosen cut dealt done drawn driven fed felt found freed frozen given gone
  ground held hung hurt kept known laid led left lent let lifted lit lost made met mounted overridden paid put read redone rent reset rewound
  run said sawn seen sent set shaken shown shrunk shut slid slit slung sold spent spilt split spread spun stood struck stuck swept swung
  taken taught thrown told torn undone unwound used withdrawn withheld wound woven written
`);

/** Words in -ed that are none, or that say how something is, not what is done to it. */
const NO_PARTICIPLES = wordList(`
  aged allowed based bed bleed concerned exceed feed indeed interested limited located need needed permitted proceed red required seed shed
  situated speed succeed supposed threaded toothed tired tried used-up weed wicked
`);
