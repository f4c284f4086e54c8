/** The printed sheet: all that was written down, a row a session, for those who bring paper. */
import { type DiaryEntry, sessionKey } from "../../diary/entry.ts";
import { inUnit } from "../../units/mass.ts";
import { useApp } from "./app.ts";

/** Shown on paper only, and only when it is asked for. */
export function Sheet() {
  const { say, diary, data, names, now } = useApp();
  return (
    <section class="sheet" aria-hidden="true">
      <h1>{say("sheet.heading", { client: data.client })}</h1>
      <p>{say("sheet.made", { clinic: data.clinic.name, day: names.long(now.date) })}</p>
      <table>
        <thead>
          <tr>
            {["day", "done", "work", "effort", "during", "after", "morning", "note"].map((name) => (
              <th key={name} scope="col">
                {say(`sheet.${name}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {diary.entries.map((entry) => (
            <Row key={sessionKey(entry)} entry={entry} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Row({ entry }: { readonly entry: DiaryEntry }) {
  const { say, names, dateOf } = useApp();
  const during = entry.exercises.map(({ pain }) => pain).filter((pain) => pain !== undefined);
  const worse = entry.worseMorning === true ? ` (${say("no-worse")})` : "";
  return (
    <tr>
      <th scope="row">
        {names.short(dateOf(entry))}, {say(`part.${entry.part}`)}
      </th>
      <td>{say(`done.${entry.done}`)}</td>
      <td>
        {entry.exercises.map((one) => (
          <div key={one.card}>
            {one.title}: {say(`done.${one.done}`)}
            <Really {...one.real} />
            {one.sudden === true && ` (${say("diary.sudden")})`}
          </div>
        ))}
      </td>
      <td>{entry.effort}</td>
      <td>{during.length > 0 ? Math.max(...during) : ""}</td>
      <td>{entry.painAfter}</td>
      <td>
        {entry.painMorning}
        {worse}
      </td>
      <td>{entry.note}</td>
    </tr>
  );
}

/** What was different: "2 sets, 6 kg". */
function Really({ sets, reps, kg }: DiaryEntry["exercises"][number]["real"]) {
  const { say, names, data } = useApp();
  const parts = [
    sets === undefined ? [] : [say("sheet.sets", { n: sets })],
    reps === undefined ? [] : [say("sheet.reps", { n: reps })],
    kg === undefined
      ? []
      : [say(`sheet.${data.units}`, { n: names.number(inUnit(kg, data.units)) })],
  ].flat();
  return parts.length === 0 ? null : <> ({parts.join(", ")})</>;
}
