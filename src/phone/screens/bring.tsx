/** Bringing the diary back: a file to send or save, a sheet to print, a code to read at the desk, and taking a file in. */
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { diaryCodes } from "../../diary/code.ts";
import { diaryCsv, readDiary } from "../../diary/csv.ts";
import type { Diary } from "../../diary/entry.ts";
import { sinceDay } from "../../diary/merge.ts";
import { addDays } from "../../units/dates.ts";
import { canShare, saveFile, shareFile } from "../device/files.ts";
import { useApp } from "./app.ts";
import { Codes } from "./codes.tsx";
import { Keeping } from "./keeping.tsx";
import { Heading } from "./parts.tsx";
import { SamePerson } from "./same-person.tsx";
import { Sheet } from "./sheet.tsx";

export function BringScreen() {
  const app = useApp();
  const { say, diary, now, data } = app;
  const [told, setTold] = useState("");
  const [codes, setCodes] = useState<readonly string[] | undefined>(undefined);
  const file = () =>
    new File([diaryCsv(diary)], `${data.plan}-diary-${now.date}.csv`, { type: "text/csv" });
  const nothing = diary.entries.length === 0;
  const lastWeek = sinceDay(diary, addDays(now.date, -6));
  return (
    <>
      <Heading>{say("bring.heading")}</Heading>
      <p>{say("bring.how", { clinic: data.clinic.name })}</p>
      {nothing && <p class="notice">{say("bring.nothing")}</p>}
      {!nothing && (
        <ul class="ways">
          {canShare(file()) && (
            <Way
              main
              label={say("bring.share")}
              onTap={async () => {
                if (!(await shareFile(file()))) setTold(say("bring.not-sent"));
              }}
            />
          )}
          <Way
            label={say("bring.save")}
            onTap={() => {
              saveFile(file());
              setTold(say("bring.saved", { file: file().name }));
            }}
          />
          <Way
            label={say("bring.code")}
            expanded={codes !== undefined}
            disabled={lastWeek.entries.length === 0}
            onTap={() => setCodes(codes === undefined ? diaryCodes(lastWeek) : undefined)}
          >
            {codes && <Codes texts={codes} />}
          </Way>
          <Way label={say("bring.print")} onTap={printSheet} />
        </ul>
      )}
      <TakeIn onTold={setTold} />
      <p role="status">{told}</p>
      <Keeping onTold={setTold} />
      <Sheet />
    </>
  );
}

interface WayProps {
  readonly label: string;
  readonly onTap: () => void;
  readonly main?: boolean;
  readonly disabled?: boolean;
  /** Whether what it opens is open, where it opens something. */
  readonly expanded?: boolean;
  readonly children?: ComponentChildren;
}

/** A way to bring the diary back: a button, and what it opens. */
function Way({ label, onTap, main, disabled, expanded, children }: WayProps) {
  return (
    <li>
      <button
        type="button"
        class={main ? "button main" : "button"}
        aria-expanded={expanded}
        disabled={disabled}
        onClick={onTap}
      >
        {label}
      </button>
      {children}
    </li>
  );
}

/** Prints the sheet in place of the booklet. */
function printSheet(): void {
  const root = document.documentElement;
  root.dataset.print = "sheet";
  const after = () => {
    delete root.dataset.print;
  };
  window.addEventListener("afterprint", after, { once: true });
  window.print();
}

/** A file that was saved on another device. */
function TakeIn({ onTold }: { readonly onTold: (text: string) => void }) {
  const app = useApp();
  const { say, data } = app;
  const [asked, setAsked] = useState<Asked | undefined>(undefined);
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    const { diary, problems } = readDiary(await file.text());
    if (diary === undefined) return onTold(say("take.not-a-diary", { file: file.name }));
    if (diary.plan !== data.plan) return onTold(say("take.other", { file: file.name }));
    const n = diary.entries.length;
    const lines = problems.length;
    const taken = say(lines === 0 ? "take.done" : "take.partly", { n, lines });
    if (diary.client === data.client) join(diary, taken);
    else setAsked({ diary, taken });
  };
  const join = ({ entries }: Diary, taken: string) => {
    app.act({ joined: entries }, taken);
    onTold("");
  };
  if (asked) {
    const { diary, taken } = asked;
    const answered = (then: () => void) => () => {
      setAsked(undefined);
      then();
    };
    return (
      <>
        <h2>{say("same.heading")}</h2>
        <SamePerson
          other={diary.client}
          onYes={answered(() => join(diary, taken))}
          onNo={answered(() => onTold(say("take.not-taken")))}
        />
      </>
    );
  }
  return (
    <label class="button file">
      {say("take.label")}
      <input
        type="file"
        accept=".csv,text/csv"
        onChange={async (event) => {
          const input = event.currentTarget;
          await take(input.files?.[0]);
          input.value = "";
        }}
      />
    </label>
  );
}

/** A diary of the same plan with another reference, and what is said once it is taken in. */
interface Asked {
  readonly diary: Diary;
  readonly taken: string;
}
