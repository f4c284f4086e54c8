/**
 * A phone inside the page: its clock, its timers, its storage and its tabs. The companion that runs in it is
 * the built one; whatever it asks of time or storage it gets from here, so that weeks pass in a moment.
 */

type Act = () => void;

interface Timer {
  readonly act: Act;
  dueMs: number;
  /** How often it is due again; undefined for one that is due once. */
  readonly everyMs: number | undefined;
}

/** Storage with room for so many characters. */
class Shelf {
  readonly #texts = new Map<string, string>();
  room = Number.POSITIVE_INFINITY;
  /** How often something was written. */
  writes = 0;

  get length(): number {
    return this.#texts.size;
  }
  key(at: number): string | null {
    return [...this.#texts.keys()][at] ?? null;
  }
  getItem(key: string): string | null {
    return this.#texts.get(key) ?? null;
  }
  setItem(key: string, text: string): void {
    if (key !== "paulatim try") this.writes += 1;
    const others = this.size() - (this.#texts.get(key)?.length ?? 0);
    if (others + text.length > this.room) throw new DOMException("full", "QuotaExceededError");
    this.#texts.set(key, text);
  }
  removeItem(key: string): void {
    this.#texts.delete(key);
  }
  clear(): void {
    this.#texts.clear();
    this.room = Number.POSITIVE_INFINITY;
  }
  size(): number {
    return [...this.#texts.values()].reduce((sum, text) => sum + text.length, 0);
  }
}

/** A booklet's file, ready to be opened. */
export interface OpenFile {
  readonly body: HTMLElement;
}

/** Between two drawings of the page at least so much time goes by: a slow phone. */
const FRAME_MS = 250;
/** A wait is looked at in so many steps at most: like a page whose timers are slowed down. */
const STEPS = 12;

const RealDate = Date;

export class Screen {
  readonly local = new Shelf();
  readonly session = new Shelf();
  /** What the page has given out as a file, last to first. */
  readonly saved: string[] = [];
  readonly errors: string[] = [];
  nowMs = 0;
  readonly drawn: boolean;
  #timers = new Map<number, Timer>();
  #listeners: (() => void)[] = [];
  #ids = 1;
  #hidden = false;
  #hashes: string[] = [];
  readonly #boot: Act;
  #file: OpenFile | undefined;

  /** `drawn`: whether what is shown is laid out, too; it takes several times as long. */
  constructor(code: string, drawn: boolean) {
    this.drawn = drawn;
    this.#boot = new Function(code) as Act;
    if (!drawn) {
      document.documentElement.style.display = "none";
      HTMLElement.prototype.focus = () => undefined;
    }
    this.#takeTime();
    this.#takeDevice();
    this.#takeListeners();
  }

  #takeTime(): void {
    const screen = this;
    const add = (act: Act, afterMs = 0, everyMs?: number) => {
      const id = this.#ids++;
      this.#timers.set(id, { act, dueMs: this.nowMs + afterMs, everyMs });
      return id;
    };
    const drop = (id: number) => this.#timers.delete(id);
    class PhoneDate extends RealDate {
      constructor(...parts: []) {
        if (parts.length > 0) super(...parts);
        else super(screen.nowMs);
      }
      static override now() {
        return screen.nowMs;
      }
    }
    const time = {
      setTimeout: (act: Act, ms?: number) => add(act, ms),
      setInterval: (act: Act, ms = 0) => add(act, ms, ms),
      requestAnimationFrame: (act: (at: number) => void) => add(() => act(this.nowMs), 16),
      clearTimeout: drop,
      clearInterval: drop,
      cancelAnimationFrame: drop,
      Date: PhoneDate,
    };
    for (const [name, value] of Object.entries(time)) put(window, name, value);
    performance.now = () => this.nowMs;
  }

  #takeDevice(): void {
    const { saved } = this;
    class PhoneFile extends File {
      constructor(parts: BlobPart[], name: string, options?: FilePropertyBag) {
        super(parts, name, options);
        PhoneFile.texts.set(this, parts.join(""));
      }
      static readonly texts = new WeakMap<object, string>();
    }
    put(window, "File", PhoneFile);
    URL.createObjectURL = (file) => {
      saved.unshift(PhoneFile.texts.get(file) ?? "");
      return "#";
    };
    URL.revokeObjectURL = () => undefined;
    put(window, "ResizeObserver", NoObserver);
    for (const name of ["AudioContext", "speechSynthesis"]) put(window, name, undefined);
    put(navigator, "wakeLock", undefined);
    window.print = () => undefined;
    window.scrollTo = () => undefined;
    Element.prototype.scrollIntoView = () => undefined;
    Object.defineProperty(window, "localStorage", { get: () => this.local });
    Object.defineProperty(window, "sessionStorage", { get: () => this.session });
    const state = () => (this.#hidden ? "hidden" : "visible");
    Object.defineProperty(document, "visibilityState", { get: state });
    Object.defineProperty(document, "hidden", { get: () => this.#hidden });
    window.addEventListener("error", ({ message }) => this.errors.push(message));
    window.addEventListener("unhandledrejection", ({ reason }) => this.errors.push(String(reason)));
  }

  /** Listeners of the page itself go with the page. */
  #takeListeners(): void {
    for (const target of [window, document]) {
      const add = target.addEventListener.bind(target);
      target.addEventListener = (type: string, act: EventListenerOrEventListenerObject) => {
        add(type, act);
        this.#listeners.push(() => target.removeEventListener(type, act));
      };
    }
  }

  /** Opens a file: the first time, or after the tab has gone. */
  async open(file: OpenFile, hash: string): Promise<void> {
    this.end();
    const root = document.documentElement;
    root.classList.remove("on-phone", "nav-flows");
    delete root.dataset.screen;
    if (file === this.#file) {
      const place = document.createElement("div");
      place.id = "phone";
      document.getElementById("phone")?.replaceWith(place);
    } else {
      document.body.replaceWith(file.body.cloneNode(true));
      this.#file = file;
    }
    this.#hidden = false;
    history.replaceState(null, "", hash === "" ? location.pathname : hash);
    this.#hashes = [location.hash];
    this.#boot();
    await this.settle();
  }

  /** The page has gone, and was told nothing. */
  end(): void {
    for (const remove of this.#listeners) remove();
    this.#listeners = [];
    this.#timers.clear();
  }

  /** The last that a page is told before it goes. */
  async unload(): Promise<void> {
    this.#hidden = true;
    document.dispatchEvent(new Event("visibilitychange"));
    window.dispatchEvent(new Event("pagehide"));
    await this.settle();
  }

  /** Another app is in front, or the phone lies in a pocket; and back again. */
  async away(ms: number): Promise<void> {
    this.#hidden = true;
    document.dispatchEvent(new Event("visibilitychange"));
    await this.pass(ms);
    this.#hidden = false;
    document.dispatchEvent(new Event("visibilitychange"));
    await this.settle();
  }

  /** All that follows from a tap without any time going by, and the next drawing of the page. */
  async settle(): Promise<void> {
    for (let round = 0; round < 6; round += 1) {
      await calm();
      if (location.hash !== this.#hashes.at(-1)) {
        this.#hashes.push(location.hash);
        window.dispatchEvent(new Event("hashchange"));
        continue;
      }
      if (!this.#runDue(this.nowMs + 20)) return;
    }
  }

  /** Time goes by. */
  async pass(ms: number): Promise<void> {
    const until = this.nowMs + ms;
    const step = Math.max(FRAME_MS, ms / STEPS);
    while (this.nowMs < until) {
      this.nowMs = Math.min(until, this.nowMs + step);
      if (this.#runDue(this.nowMs)) await calm();
    }
    await this.settle();
  }

  /** Whether anything was due. */
  #runDue(atMs: number): boolean {
    const due = [...this.#timers].filter(([, { dueMs }]) => dueMs <= atMs);
    for (const [id, timer] of due) {
      if (!this.#timers.has(id)) continue;
      if (timer.everyMs === undefined) this.#timers.delete(id);
      else timer.dueMs = atMs + timer.everyMs;
      timer.act();
    }
    return due.length > 0;
  }

  /** Taps something: a link leads to its place in the page. */
  async tap(element: HTMLElement): Promise<void> {
    const link = element.closest("a");
    if (link === null) element.click();
    else {
      const to = link.getAttribute("href") ?? "";
      if (to.startsWith("#")) location.hash = to;
    }
    await this.settle();
  }

  /** The browser's own way back. */
  async back(): Promise<void> {
    this.#hashes.pop();
    const to = this.#hashes.at(-1) ?? "";
    history.replaceState(null, "", to === "" ? location.pathname : to);
    if (this.#hashes.length === 0) this.#hashes = [location.hash];
    window.dispatchEvent(new Event("hashchange"));
    await this.settle();
  }
}

class NoObserver {
  observe(): void {}
  disconnect(): void {}
}

const put = (target: object, name: string, value: unknown): void => {
  Object.defineProperty(target, name, { value, configurable: true, writable: true });
};

/** Whatever waits for promises goes on. */
async function calm(): Promise<void> {
  for (let n = 0; n < 4; n += 1) await undefined;
}
