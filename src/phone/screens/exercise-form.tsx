/** Writing down one exercise: done or not, what was different, and the pain. */
import { useState } from "preact/hooks";
import type { SessionBout } from "../../compose/session-model.ts";
import type { DiaryExercise, Done } from "../../diary/entry.ts";
import { asksWeight } from "../../diary/questions.ts";
import { inUnit, kilograms, toGram } from "../../units/mass.ts";
import { adviceDuring } from "../day/advice.ts";
import { amountToChange } from "../day/entries.ts";
import { type Odd, oddOf } from "../day/odd.ts";
import { useApp } from "./app.ts";
import { AskBack } from "./ask-back.tsx";
import { AdviceBox, Choice, Count, Fold, PainScale, Sudden } from "./parts.tsx";

type Change = Partial<Pick<DiaryExercise, "done" | "real" | "pain" | "sudden">>;

interface ExerciseFormProps {
  /** As it is planned; undefined where the booklet no longer has it. */
  readonly bout: SessionBout | undefined;
  readonly exercise: DiaryExercise;
  /** `said`: what was done in one tap, which can be taken back. */
  readonly onChange: (change: Change, said?: string) => void;
}

/** What is asked back, and the change that waits for the answer. */
interface Asked {
  readonly odd: Odd;
  readonly wanted: Change;
  readonly said: string | undefined;
}

/** One exercise: done or not, how much where it was different, and the pain. */
export function ExerciseForm({ bout, exercise, onChange }: ExerciseFormProps) {
  const { say, data } = useApp();
  const { title, pain, sudden } = exercise;
  const [asked, setAsked] = useState<Asked | undefined>(undefined);
  const change: ExerciseFormProps["onChange"] = (wanted, said) => {
    const odd = oddOf(exercise, wanted, amountToChange(bout, exercise));
    setAsked(odd && { odd, wanted, said });
    if (odd === undefined) onChange(wanted, said);
  };
  const answer = ({ odd: { amount }, wanted, said }: Asked, right: boolean) => {
    setAsked(undefined);
    if (!right) return;
    // what else was written while it was asked stays
    const real = wanted.real && { ...exercise.real, [amount]: wanted.real[amount] };
    onChange({ ...wanted, ...(real && { real }) }, said);
  };
  const advice = bout && adviceDuring(pain, bout, data.pain, sudden);
  const options: readonly Done[] = ["yes", "part", "no"];
  return (
    <section class="write-exercise">
      <h2>{title}</h2>
      {bout && <p class="quiet">{bout.dose.slice(0, 2).join(" · ")}</p>}
      <Choice
        legend={say("write.done", { exercise: title })}
        legendHidden
        options={options.map((value) => ({ value, label: say(`done.${value}`) }))}
        value={exercise.done}
        onChange={(done) => change({ done }, say("kept"))}
      />
      {exercise.done !== "no" && <Different bout={bout} exercise={exercise} onChange={change} />}
      {asked && <AskBack odd={asked.odd} onAnswer={(right) => answer(asked, right)} />}
      {(exercise.done !== "no" || pain !== undefined) && (
        <PainScale
          legend={say("write.during")}
          value={pain}
          onChange={(number) => onChange({ pain: number }, say("kept"))}
        />
      )}
      {(advice || sudden !== undefined) && (
        <Sudden sudden={sudden} onChange={(answer) => onChange({ sudden: answer }, say("kept"))} />
      )}
      {advice && <AdviceBox advice={advice} />}
    </section>
  );
}

/** Sets, repetitions and load where they were not as planned. */
function Different({ bout, exercise, onChange }: ExerciseFormProps) {
  const { say, data } = useApp();
  const { planned, real } = exercise;
  const { units } = data;
  const kg = real.kg ?? planned.kg;
  /** What is typed in the clinic's unit; the planned load where it reads the same. */
  const inKilograms = (value: number) =>
    planned.kg !== undefined && inUnit(planned.kg, units) === value
      ? planned.kg
      : toGram(kilograms(value, units));
  const plan = amountToChange(bout, exercise);
  const now = { sets: real.sets ?? plan.sets, reps: real.reps ?? plan.reps };
  const amount = (name: "sets" | "reps", step: number, most: number) =>
    now[name] === undefined ? null : (
      <Count
        label={say(`write.${name}`)}
        value={now[name]}
        step={step}
        most={most}
        onChange={(value) => onChange({ real: { ...real, [name]: value } }, say("kept"))}
      />
    );
  return (
    <Fold summary={say("write.different")}>
      {amount("sets", 1, 50)}
      {amount("reps", 1, 500)}
      {asksWeight(planned) && kg !== undefined && (
        <Count
          label={say(`write.${units}`)}
          value={inUnit(kg, units)}
          step={units === "lb" ? 1 : 0.5}
          most={inUnit(500, units)}
          onChange={(value) => onChange({ real: { ...real, kg: inKilograms(value) } }, say("kept"))}
        />
      )}
    </Fold>
  );
}
