/** One seeded client: twelve weeks of taps on a booklet and its re-issues, with all that happens to a phone. */
import { type Random, randomFrom } from "../../surfaces/random.ts";
import type { Reason } from "./advice.ts";
import { dueNow, sessionOf, wrongOnScreen } from "./checks.ts";
import { momentAt, nextDay, type Program, withSigns } from "./program.ts";
import type { OpenFile, Screen } from "./screen.ts";
import { type Difference, differences, retold, type Sheet, sheetOf } from "./sheet.ts";
import type { Begun } from "./starts.ts";
import { chosen, nameOf, type Tap, type Told } from "./taps.ts";

const DAYS = 84;
const MINUTE_MS = 60_000;

/** A booklet's file, and what it says. */
export interface Version extends OpenFile {
  readonly program: Program;
}

export interface Outcome {
  readonly seed: number;
  /** What is wrong; empty where nothing is. */
  readonly wrong: readonly string[];
  /** All that was tapped, for whoever wants to follow. */
  readonly log: readonly string[];
  /** How often each thing was done. */
  readonly counts: Readonly<Record<string, number>>;
}

/** Taps until the twelve weeks are over, or something is wrong. */
export async function tapThrough(
  seed: number,
  screen: Screen,
  versions: readonly Version[],
): Promise<Outcome> {
  const client = new Client(seed, screen, versions);
  try {
    await client.live();
  } catch (error) {
    client.wrong.push(`the tapper broke: ${error instanceof Error ? error.stack : String(error)}`);
  }
  return { seed, wrong: client.wrong, log: client.log, counts: client.counts };
}

/** As it was before the last tap that can be taken back. */
interface Before {
  readonly sheet: Sheet;
  readonly called: readonly Reason[];
  readonly begunUnsure: boolean;
}

class Client {
  readonly wrong: string[] = [];
  readonly log: string[] = [];
  readonly counts: Record<string, number> = {};
  readonly #random: Random;
  readonly #screen: Screen;
  readonly #versions: readonly Version[];
  #at = 0;
  #mood = 3;
  /** What has to be in the diary. */
  #sheet: Sheet = new Map();
  #text: string | null = null;
  #begun = new Map<string, Begun>();
  #called: readonly Reason[] = [];
  /** The same of each reference that the client had before. */
  readonly #calledOf = new Map<string, readonly Reason[]>();
  /** Whether something was chosen that a full storage has not kept, and that is gone with its window. */
  #unsure = false;
  #begunUnsure = false;
  #before: Before | undefined;

  constructor(seed: number, screen: Screen, versions: readonly Version[]) {
    this.#random = randomFrom(seed + 9_000_000);
    this.#screen = screen;
    this.#versions = versions;
  }

  get #version(): Version {
    const version = this.#versions[this.#at];
    if (version === undefined) throw new Error("no booklet");
    return version;
  }

  get #program(): Program {
    const { program } = this.#version;
    const { local, session } = this.#screen;
    const text = session.getItem(this.#key("settings")) ?? local.getItem(this.#key("settings"));
    const { ready = [] } = JSON.parse(text ?? "{}");
    return withSigns(program, ready);
  }

  readonly #count = (what: string): void => {
    this.counts[what] = (this.counts[what] ?? 0) + 1;
  };

  #note(what: string): void {
    const { local, nowMs } = this.#screen;
    const full = Number.isFinite(local.room) ? " (full)" : "";
    const at = new Date(nowMs).toString().slice(4, 21);
    this.log.push(`${at}${full} ${window.location.hash} ${what}`);
  }

  async live(): Promise<void> {
    const random = this.#random;
    const { local, session } = this.#screen;
    local.clear();
    session.clear();
    const first = this.#version.program.sessions[0]?.date ?? this.#version.program.made;
    const often = random.one([0.08, 0.16, 0.25]);
    let open = false;
    for (let n = -1; n < DAYS && this.wrong.length === 0; n += 1) {
      if (!random.chance(n === 0 ? 1 : often)) continue;
      for (const minutes of this.#times()) {
        if (this.wrong.length > 0) return;
        const at = new Date(`${nextDay(first, n)}T00:00:00`).getTime() + minutes * MINUTE_MS;
        if (at <= this.#screen.nowMs && open) continue;
        await this.#come(at, open);
        open = true;
        await this.#visit();
      }
    }
    await this.#leaveFull();
    if (this.wrong.length === 0) await this.#export();
  }

  /** When the client takes the phone on a day: in minutes from midnight; some hours are past the next. */
  #times(): number[] {
    const random = this.#random;
    const { clock } = this.#program;
    const parts = random.some(Object.values(clock), random.one([1, 1, 1, 2]));
    const near = parts.map((at) => at + random.whole(-40, 100));
    const late = random.chance(0.1) ? [random.whole(23 * 60 + 40, 24 * 60 + 20)] : [];
    return [...near, ...late].map((at) => Math.max(5, at)).sort((a, b) => a - b);
  }

  /** The page is found as it was left, or opened anew; sometimes a newer booklet has come meanwhile. */
  async #come(at: number, open: boolean): Promise<void> {
    const screen = this.#screen;
    const next = this.#versions[this.#at + 1];
    const day = new Date(at - new Date(at).getTimezoneOffset() * MINUTE_MS)
      .toISOString()
      .slice(0, 10);
    // some open it days after the clinic made it
    if (open && next !== undefined && next.program.made <= day && this.#random.chance(0.6))
      return this.#reissue(at);
    if (open && this.#random.chance(0.35)) {
      this.#note("away");
      await screen.away(at - screen.nowMs);
      return this.#look();
    }
    if (open) await this.#go(this.#random.chance(0.25) ? "lost" : "closed", at);
    else {
      screen.nowMs = at;
      await this.#openFile("");
    }
  }

  async #openFile(hash: string): Promise<void> {
    await this.#screen.open(this.#version, hash);
    this.#look();
  }

  /** The next booklet is opened in place of the one before. */
  async #reissue(at: number): Promise<void> {
    await this.#leaveFull();
    this.#note("re-issue");
    this.#count("re-issue");
    await this.#screen.unload();
    this.#look();
    this.#closeWindow();
    const { client } = this.#version.program;
    this.#at += 1;
    const now = this.#version.program.client;
    this.#screen.nowMs = at;
    if (now !== client) {
      this.#count("another reference");
      this.#calledOf.set(client, this.#called);
      this.#begunUnsure = true;
      [this.#sheet, this.#text, this.#called, this.#before] = [new Map(), null, [], undefined];
    }
    await this.#openFile("");
  }

  /** The page goes and comes back: loaded anew, closed and opened, or lost without a word. */
  async #go(how: "reload" | "closed" | "lost", at: number): Promise<void> {
    const screen = this.#screen;
    this.#note(how);
    this.#count(how);
    if (how !== "lost") await screen.unload();
    this.#look();
    const hash = how === "closed" ? "" : window.location.hash;
    const restored = how === "reload" || (how === "lost" && this.#random.chance(0.5));
    if (!restored) this.#closeWindow();
    screen.nowMs = Math.max(at, screen.nowMs);
    this.#before = undefined;
    await this.#openFile(hash);
  }

  /** What was not kept goes with the window: that has to have been said. */
  #closeWindow(): void {
    const { session } = this.#screen;
    const [held, chosen] = [
      session.getItem(this.#key("diary")),
      session.getItem(this.#key("settings")),
    ];
    session.clear();
    if (chosen !== null) [this.#unsure, this.#begunUnsure] = [true, true];
    if (held === null && chosen === null) return;
    this.#count("lost with the window");
    const { words } = this.#program;
    const told = document.querySelector(".trouble")?.textContent ?? "";
    if (!told.startsWith(words["trouble.full"] ?? "?"))
      this.wrong.push(`what was not kept goes with the window, and nobody was told: “${told}”`);
    this.#text = this.#screen.local.getItem(this.#key("diary"));
    this.#sheet = sheetOf(this.#text ?? "");
  }

  async #leaveFull(): Promise<void> {
    this.#screen.local.room = Number.POSITIVE_INFINITY;
  }

  async #visit(): Promise<void> {
    const random = this.#random;
    const screen = this.#screen;
    this.#mood = random.one([0, 1, 2, 2, 3, 3, 4, 5, 6, 8]);
    const fills = random.chance(0.06);
    for (let n = random.one([2, 4, 8, 14]); n > 0 && this.wrong.length === 0; n -= 1) {
      if (fills && random.chance(0.2)) {
        this.#note("the storage is full");
        this.#count("full");
        screen.local.room = screen.local.size() + random.whole(0, 3000);
      }
      await this.#step();
    }
    if (fills && random.chance(0.8)) await this.#leaveFull();
    if (random.chance(0.03) && this.wrong.length === 0) await this.#export();
  }

  /** A tap, or what happens in its place; and some time. */
  async #step(): Promise<void> {
    const random = this.#random;
    const screen = this.#screen;
    const now = screen.nowMs;
    if (random.chance(0.02)) return this.#go(random.one(["reload", "reload", "lost"]), now + 2000);
    if (random.chance(0.02)) {
      this.#note("away");
      await screen.away(random.one([5, 90, 20 * 60, 9 * 3600]) * 1000);
      return this.#look();
    }
    if (random.chance(0.03)) {
      this.#note("back");
      this.#count("back");
      await screen.back();
      return this.#look();
    }
    const tap = chosen(random, this.#program, this.#mood);
    if (tap === undefined) throw new Error("nothing can be tapped");
    await this.#tap(tap);
    if (random.chance(0.5)) {
      await screen.pass(random.one([400, 2000, 5000, 5000, 40_000]));
      this.#look();
    }
  }

  async #tap(tap: Tap): Promise<void> {
    const { kind, told, element, label } = tap;
    const screen = this.#screen;
    this.#note(`${kind}: ${label}`);
    if (screen.drawn && !element.checkVisibility()) this.wrong.push(`${label} cannot be seen`);
    this.#count(kind);
    if (kind === "today.start") this.#begin(element);
    const was: Before = {
      sheet: this.#sheet,
      called: this.#called,
      begunUnsure: this.#begunUnsure,
    };
    const writes = screen.local.writes + screen.session.writes;
    if (kind === "call.called") {
      this.#called = [...this.#called, ...dueNow(this.#known()).open];
    }
    if (kind === "note") await this.#write(element as HTMLTextAreaElement);
    else if (kind === "typed") await this.#type(element as HTMLInputElement);
    else await screen.tap(element);
    if (kind === "undo.undo" && nameOf(element) === this.#program.words["undo.undo"]) {
      const before = element.closest(".undo") ? this.#before : undefined;
      if (before) [this.#called, this.#begunUnsure] = [before.called, before.begunUnsure];
      this.#look({ undone: before });
    } else if (kind === "delete.yes") this.#deleted();
    else if (kind === "same.yes") this.#joined();
    else this.#look({ told });
    if (kind === "write.all") this.#asPlanned(was.sheet);
    const wrote = screen.local.writes + screen.session.writes > writes;
    if (document.querySelector(".undo") === null) this.#before = undefined;
    else if (wrote) this.#before = was;
  }

  /** What was told of an exercise is never replaced by “as planned”. */
  #asPlanned(before: Sheet): void {
    for (const { id, done, real } of retold(before, this.#sheet))
      this.wrong.push(`all as planned: ${id} was ${done} ${real}, and is told otherwise`);
  }

  #begin(button: HTMLElement): void {
    const { nowMs } = this.#screen;
    const at = momentAt(nowMs, this.#program);
    const session = sessionOf(button, at.day, this.#known());
    if (session === undefined) return;
    this.#begun.delete(session.name);
    this.#begun.set(session.name, { session, at });
  }

  async #write(field: HTMLTextAreaElement): Promise<void> {
    const text = this.#random.one(["sore; then fine", 'so "so"', "=1+1", "a, b", ""]);
    setValue(field, text);
    field.dispatchEvent(new Event("input", { bubbles: true }));
    if (this.#random.chance(0.6)) field.dispatchEvent(new Event("blur"));
    await this.#screen.settle();
  }

  async #type(field: HTMLInputElement): Promise<void> {
    setValue(field, String(this.#random.one([0, 1, 2, 5, 12, 40, 400])));
    field.dispatchEvent(new Event("change", { bubbles: true }));
    await this.#screen.settle();
  }

  #key(what: string): string {
    const { plan, client } = this.#version.program;
    return `paulatim ${plan} ${client} ${what}`;
  }

  #known() {
    return {
      program: this.#program,
      sheet: this.#sheet,
      nowMs: this.#screen.nowMs,
      begun: this.#begun,
      called: this.#called,
      callsUnsure: this.#unsure,
      begunUnsure: this.#begunUnsure,
      count: this.#count,
    };
  }

  /** What is written now: kept, or held for as long as the window is open. */
  #written(): string | null {
    const { local, session } = this.#screen;
    return session.getItem(this.#key("diary")) ?? local.getItem(this.#key("diary"));
  }

  /** Holds what is written against what was tapped, and the screen against the rules. */
  #look({ told, undone }: { told?: Told | undefined; undone?: Before | undefined } = {}): void {
    const text = this.#written();
    const before = this.#sheet;
    if (text !== this.#text) {
      this.#text = text;
      this.#sheet = sheetOf(text ?? "");
    }
    const expected = undone?.sheet ?? before;
    const changed = differences(expected, this.#sheet).filter(
      (one) => !(told && isTold(one, told)),
    );
    for (const { row, column, had, has } of changed)
      this.wrong.push(`${column} of ${row.id} (${row.title}) was ${had} and is ${has}`);
    if (told && !this.#has(told))
      this.wrong.push(
        `${told.column} ${told.value} of ${told.title ?? "the session"} is not written`,
      );
    this.wrong.push(...this.#screen.errors.splice(0));
    if (this.#isKeptSaid()) this.wrong.push("it is said to be kept, and is not");
    this.wrong.push(...wrongOnScreen(this.#known()));
  }

  /** Whether the screen says that all is kept on this phone where it is not. */
  #isKeptSaid(): boolean {
    if (this.#screen.session.getItem(this.#key("diary")) === null) return false;
    const { kept } = this.#program.words;
    return [...document.querySelectorAll("#phone [role=status]")].some(
      (one) => one.textContent === kept,
    );
  }

  #has({ column, value, title, hurts }: Told): boolean {
    const [, name = ""] = window.location.hash.replace(/^#\//, "").split("/");
    const date = name.slice(0, 10);
    return [...this.#sheet.values()].some(
      (row) =>
        (date === "" || row.date === date || column.endsWith("morning")) &&
        (title === undefined || row.title === title) &&
        (hurts && column === "pain_during"
          ? (row.numbers[column] ?? -1) >= value
          : row.numbers[column] === value),
    );
  }

  #deleted(): void {
    this.#text = this.#written();
    if (this.#text !== null) this.wrong.push("the diary was to be deleted, and is still there");
    [this.#sheet, this.#called] = [new Map(), []];
    this.#begun.clear();
    this.#look();
  }

  /** The diary of another reference goes on in this one: all of it has to be there. */
  #joined(): void {
    const others = [...this.#calledOf.keys()];
    const { plan } = this.#version.program;
    const old = sheetOf(
      this.#screen.local.getItem(`paulatim ${plan} ${others.at(-1)} diary`) ?? "",
    );
    const now = sheetOf(this.#written() ?? "");
    for (const { row, column, had, has } of differences(old, now))
      if (had !== undefined)
        this.wrong.push(`joined: ${column} of ${row.id} was ${had} and is ${has}`);
    [this.#text, this.#sheet] = [this.#written(), now];
    // of several it is not known whose answer it was
    if (others.length > 1) this.#unsure = true;
    else {
      this.#called = [...(this.#calledOf.get(others[0] ?? "") ?? []), ...this.#called];
      this.#begunUnsure = this.#unsure;
    }
    this.#look();
  }

  /** The diary as the clinic gets it. */
  async #export(): Promise<void> {
    const screen = this.#screen;
    const { words } = this.#program;
    window.location.hash = "#/bring";
    await screen.settle();
    const find = (key: string) =>
      [...document.querySelectorAll<HTMLElement>("#phone button")].find(
        (one) => nameOf(one) === words[key],
      );
    const save = find("bring.save");
    if (find("same.yes")) return;
    this.#note("export");
    if (save === undefined) {
      // entries that were taken back are still kept, and nobody is shown them
      const told = [...this.#sheet.values()].some(({ numbers }) => Object.keys(numbers).length > 0);
      if (told) this.wrong.push("there is a diary, and no way to save it");
      return;
    }
    screen.saved.length = 0;
    await screen.tap(save);
    this.#count("export");
    const sent = sheetOf(screen.saved[0] ?? "");
    for (const { row, column, had, has } of differences(this.#sheet, sent))
      this.wrong.push(`exported: ${column} of ${row.id} was ${had} and is ${has}`);
  }
}

/** Whether a difference is what was tapped. */
function isTold({ row, column, had, has }: Difference, told: Told): boolean {
  if (column !== told.column || (told.title !== undefined && row.title !== told.title))
    return false;
  if (has === told.value) return true;
  return (
    told.hurts &&
    column === "pain_during" &&
    has !== undefined &&
    has >= told.value &&
    has >= (had ?? 0) - 10
  );
}

/** As a person types it: the page's own way of setting a value is passed by. */
function setValue(field: HTMLInputElement | HTMLTextAreaElement, text: string): void {
  const own = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(field), "value");
  own?.set?.call(field, text);
}
