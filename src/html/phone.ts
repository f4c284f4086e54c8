/** What the booklet's file tells its script: the sessions and words of the companion, as JSON. */
import { createHash } from "node:crypto";
import type { Booklet } from "../compose/model.ts";
import type { PainWords, SessionBout } from "../compose/session-model.ts";
import type { KeptBout, PhoneData, SessionKind } from "../phone/day/data.ts";
import { PARTS } from "../units/day-parts.ts";
import type { Words } from "../words/words.ts";

/**
 * The data of a booklet. `words` are all words of its language: the screens' own are those under
 * `phone`, whose messages hold values but no plurals, and the names of the parts of the day. Same booklet, same data.
 */
export function phoneData(booklet: Booklet, words: Words): PhoneData {
  const { clinic } = booklet;
  const content = sessionsOf(booklet);
  return {
    plan: booklet.plan,
    client: booklet.client.reference,
    booklet: `${booklet.printed.date}-${markOf(content)}`,
    made: booklet.printed.date,
    language: booklet.language,
    locale: booklet.locale,
    units: booklet.units,
    clinic: {
      name: clinic.name,
      phone: clinic.phone,
      phoneLink: clinic.phoneLink,
      emergency: clinic.emergency,
      emergencyLink: clinic.emergencyLink,
    },
    pain: {
      callLevel: booklet.pain.callLevel,
      less: booklet.pain.less,
      severe: booklet.stop.severe,
      settle: words.say("stop.call.settle"),
    },
    clock: booklet.clock,
    spacing: booklet.spacing,
    ...content,
    words: Object.fromEntries([
      ...words.keys.filter(isForPhone).map((key) => [key.replace(/^phone\./, ""), words.raw(key)]),
      ...PARTS.map((part) => [`part.${part}`, booklet.partNames[part]] as const),
    ]),
  };
}

const isForPhone = (key: string): boolean => key.startsWith("phone.");

/** Sessions with all that repeats from week to week said once. */
function sessionsOf({
  sessions,
}: Booklet): Pick<PhoneData, "painWords" | "bouts" | "kinds" | "sessions"> {
  const painWords = collection<PainWords>();
  const bouts = collection<KeptBout>();
  const kinds = collection<SessionKind>();
  const placeOf = (bout: SessionBout) =>
    bouts.placeOf({ ...bout, painWords: painWords.placeOf(bout.painWords) });
  const planned = sessions.map(
    ({ week, date, part, minutes, short, bouts: own }) =>
      [date, week, kinds.placeOf({ part, minutes, short, bouts: own.map(placeOf) })] as const,
  );
  return { painWords: painWords.items, bouts: bouts.items, kinds: kinds.items, sessions: planned };
}

/** Items in the order in which they first come, each once. */
function collection<Item>() {
  const places = new Map<string, number>();
  const items: Item[] = [];
  const placeOf = (item: Item): number => {
    const text = JSON.stringify(item);
    const place = places.get(text) ?? items.push(item) - 1;
    places.set(text, place);
    return place;
  };
  return { items: items as readonly Item[], placeOf };
}

/** Six hexadecimal digits that change with the content: they tell two booklets of one day apart. */
function markOf(content: object): string {
  return createHash("sha256").update(JSON.stringify(content)).digest("hex").slice(0, 6);
}
