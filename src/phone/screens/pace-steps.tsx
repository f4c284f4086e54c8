/** How to do the exercise, in the middle of it: work waits meanwhile, and a rest goes on. */
import type { SessionBout } from "../../compose/session-model.ts";
import { useApp } from "./app.ts";
import { PaceBar } from "./pace-bar.tsx";
import { middleOf, wordOf } from "./pace-words.ts";
import { FromBooklet, Heading } from "./parts.tsx";
import type { PaceInUse } from "./use-pace.ts";

interface StepsProps {
  readonly bout: SessionBout;
  readonly pace: PaceInUse;
  readonly onBack: () => void;
  readonly onHurts: () => void;
}

export function Steps({ bout, pace, onBack, onHurts }: StepsProps) {
  const { say } = useApp();
  const { view } = pace;
  const waits = say(view.why === "waiting" ? "pace.rest-over" : "pace.paused");
  const goesOn = `${wordOf(view.segment, bout, say)} ${middleOf(view)}`;
  return (
    <section class="pace steps">
      <p class="notice">{view.mode === "paused" ? waits : goesOn}</p>
      <Heading key="steps">{say("exercise.steps")}</Heading>
      <h2>{bout.title}</h2>
      <FromBooklet anchor={bout.anchor} part=".pictures" />
      <FromBooklet anchor={bout.anchor} part=".columns" />
      <p>{bout.painWords.rule}</p>
      <p>
        <a href={`#${bout.anchor}`}>{say("exercise.page")}</a>
      </p>
      <PaceBar pace={pace} onHurts={onHurts} onBack={onBack} />
    </section>
  );
}
