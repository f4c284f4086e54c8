/** Pieces that several screens share: notices, the scale from 0 to 10, choices, and pages of the booklet. */
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import type { DiaryEntry } from "../../diary/entry.ts";
import type { Morning } from "../../pain/morning.ts";
import { type Advice, adviceMorning } from "../day/advice.ts";
import { morningAfter, withMorning } from "../day/morning.ts";
import { useApp } from "./app.ts";
import { CallUs } from "./call-us.tsx";

/** The heading of a screen: takes the focus when the screen opens, so that it is read out first. */
export function Heading({ children }: { readonly children: ComponentChildren }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {children}
    </h1>
  );
}

/** What the pain rule says, at once and plainly; a call only for as long as it is due. */
export function AdviceBox({ advice }: { readonly advice: Advice }) {
  const { say, call } = useApp();
  const { level } = advice;
  if (level === "call" && call) return <CallUs call={call} />;
  return (
    <div class={`advice advice-${level === "call" ? "ease" : level}`} role="alert">
      <p class="advice-head">{say(level === "call" ? "call.known" : `advice.${level}`)}</p>
      {advice.says.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p>
        <a href="#/stop">{say("advice.signs")}</a>
      </p>
    </div>
  );
}

const NUMBERS = Array.from({ length: 11 }, (_, n) => n);

interface ScaleProps {
  readonly legend: string;
  /** Words for the two ends. */
  readonly low: string;
  readonly high: string;
  readonly value: number | undefined;
  readonly onChange: (value: number) => void;
}

/** A number from 0 to 10, one tap each. */
export function Scale({ legend, low, high, value, onChange }: ScaleProps) {
  const name = useId();
  return (
    <fieldset class="scale">
      <legend>{legend}</legend>
      <div class="scale-row">
        {NUMBERS.map((n) => (
          <label key={n}>
            <input
              type="radio"
              name={name}
              value={n}
              checked={value === n}
              onChange={() => onChange(n)}
            />
            <span>{n}</span>
          </label>
        ))}
      </div>
      <p class="scale-ends" aria-hidden="true">
        <span>{low}</span>
        <span>{high}</span>
      </p>
    </fieldset>
  );
}

/** Pain from 0, none, to 10, the worst. */
export function PainScale(props: Omit<ScaleProps, "low" | "high">) {
  const { say } = useApp();
  return <Scale {...props} low={say("scale.none")} high={say("scale.worst")} />;
}

interface SuddenProps {
  readonly sudden: boolean | undefined;
  readonly onChange: (sudden: boolean) => void;
}

/** Whether pain came suddenly: a reason to call, whatever its number. */
export function Sudden({ sudden, onChange }: SuddenProps) {
  const { say } = useApp();
  return (
    <Choice
      legend={say("sudden")}
      options={[
        { value: "yes", label: say("yes") },
        { value: "no", label: say("no") },
      ]}
      value={sudden === undefined ? undefined : sudden ? "yes" : "no"}
      onChange={(answer) => onChange(answer === "yes")}
    />
  );
}

interface MorningProps {
  readonly legend: string;
  /** A session of the day whose next morning is asked for. */
  readonly entry: DiaryEntry;
  readonly onAnswer?: () => void;
  /** Whether the call that is due is shown elsewhere on the screen. */
  readonly callShown?: boolean;
}

/** The next morning: how much pain, whether that is back to the usual, and what the plan says to it. */
export function MorningQuestions({ legend, entry, onAnswer, callShown }: MorningProps) {
  const { say, data, sessions, diary, act } = useApp();
  const { painMorning, worseMorning } = morningAfter(entry, diary);
  const advice = adviceMorning(entry, sessions, diary, data.pain);
  const onChange = (change: Partial<Morning>) => {
    act({ entries: withMorning(entry, diary, change) }, say("kept"));
    onAnswer?.();
  };
  return (
    <>
      <PainScale
        legend={legend}
        value={painMorning}
        onChange={(value) => onChange({ painMorning: value })}
      />
      <Choice
        legend={say("morning.usual")}
        options={[
          { value: "yes", label: say("yes") },
          { value: "no", label: say("no-worse") },
        ]}
        value={worseMorning === undefined ? undefined : worseMorning ? "no" : "yes"}
        onChange={(usual) => onChange({ worseMorning: usual === "no" })}
      />
      {advice && !(callShown && advice.level === "call") && <AdviceBox advice={advice} />}
    </>
  );
}

interface ChoiceProps<Value extends string> {
  readonly legend: string;
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly value: Value | undefined;
  readonly onChange: (value: Value) => void;
  /** The legend only for those who listen. */
  readonly legendHidden?: boolean;
}

/** One of a few answers. */
export function Choice<Value extends string>({
  legend,
  options,
  value,
  onChange,
  legendHidden,
}: ChoiceProps<Value>) {
  const name = useId();
  return (
    <fieldset class="choice">
      <legend class={legendHidden ? "visually-hidden" : undefined}>{legend}</legend>
      <div class="choice-row">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={value === option.value}
              onChange={() => onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface CountProps {
  readonly label: string;
  readonly value: number;
  readonly step: number;
  readonly most: number;
  readonly onChange: (value: number) => void;
}

/** A number with a button to each side; it can be typed as well. */
export function Count({ label, value, step, most, onChange }: CountProps) {
  const { say } = useApp();
  const id = useId();
  const to = (next: number) => onChange(Math.min(most, Math.max(0, Math.round(next * 100) / 100)));
  return (
    <div class="count">
      <label for={id}>{label}</label>
      <button
        type="button"
        aria-label={say("count.less", { what: label })}
        onClick={() => to(value - step)}
      >
        −
      </button>
      <input
        id={id}
        type="number"
        inputMode="decimal"
        min={0}
        max={most}
        step="any"
        value={value}
        onChange={(event) => {
          const typed = event.currentTarget.valueAsNumber;
          if (Number.isFinite(typed)) to(typed);
        }}
      />
      <button
        type="button"
        aria-label={say("count.more", { what: label })}
        onClick={() => to(value + step)}
      >
        +
      </button>
    </div>
  );
}

/** The dose now, in words. */
export function Dose({ bout, sets }: { readonly bout: SessionBout; readonly sets: number }) {
  const { say } = useApp();
  return (
    <ul class="dose">
      {bout.sideWords !== undefined && <li class="dose-side">{bout.sideWords}</li>}
      {bout.dose.map((line) => (
        <li key={line}>{line}</li>
      ))}
      {sets < bout.sets && <li class="dose-short">{say("short.sets", { sets, of: bout.sets })}</li>}
    </ul>
  );
}

interface FromBookletProps {
  readonly anchor: string;
  /** What to show of the exercise's page. */
  readonly part: ".pictures" | ".columns" | ".care-row";
}

/** A part of an exercise's own page, copied from the booklet in this same file. */
export function FromBooklet({ anchor, part }: FromBookletProps) {
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const found = document.getElementById(anchor)?.closest(".part")?.querySelector(part);
    const copy = found?.cloneNode(true);
    box.current?.replaceChildren(...(copy ? [copy] : []));
  }, [anchor, part]);
  return <div ref={box} class={`from-booklet ${part.slice(1)}-box`} />;
}

/** What is folded until it is wanted. */
export function Fold({
  summary,
  children,
}: {
  readonly summary: string;
  readonly children: ComponentChildren;
}) {
  return (
    <details class="fold">
      <summary>{summary}</summary>
      {children}
    </details>
  );
}

/** How many sessions have been done: small steps add up. Nothing before the first. */
export function SoFar() {
  const { say, diary, sessions } = useApp();
  const n = diary.entries.filter(({ done }) => done !== "no").length;
  return n === 0 ? null : <p class="so-far">{say("so-far", { n, of: sessions.length })}</p>;
}
