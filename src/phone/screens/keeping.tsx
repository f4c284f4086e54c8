/** What this phone keeps: who can read it, what could not be read, and deleting it all. */
import { useEffect, useRef, useState } from "preact/hooks";
import { saveFile } from "../device/files.ts";
import { useApp } from "./app.ts";

interface KeepingProps {
  readonly onTold: (text: string) => void;
}

export function Keeping({ onTold }: KeepingProps) {
  const { say, diary, aside } = useApp();
  const unread = aside();
  const heading = useRef<HTMLHeadingElement>(null);
  const told = (text: string) => {
    onTold(text);
    // the buttons of the question go: whoever uses a keyboard goes on from here
    heading.current?.focus({ preventScroll: true });
  };
  return (
    <section class="keeping">
      <h2 ref={heading} tabIndex={-1}>
        {say("keep.heading")}
      </h2>
      <p>{say("keep.private")}</p>
      {isShared(window.location.protocol) && <p class="notice">{say("keep.shared")}</p>}
      {unread.length > 0 && <Unread texts={unread} onTold={onTold} />}
      {(diary.entries.length > 0 || unread.length > 0) && <Delete onTold={told} />}
    </section>
  );
}

/**
 * Whether other documents of this device may read the same storage: files have no place of their own in
 * some browsers, Chromium's among them.
 */
const isShared = (protocol: string): boolean => protocol === "file:" || protocol === "content:";

/** What was put aside, as it was found, in one file: the clinic may be able to read it. */
function Unread({ texts, onTold }: KeepingProps & { readonly texts: readonly string[] }) {
  const { say, data, now, asideTaken } = useApp();
  const save = () => {
    const name = `${data.plan}-unread-${now.date}.txt`;
    saveFile(new File([texts.join("\n\n")], name, { type: "text/plain" }));
    asideTaken();
    onTold(say("bring.saved", { file: name }));
  };
  return (
    <>
      <p>{say("keep.unread")}</p>
      <button type="button" class="button" onClick={save}>
        {say("keep.unread-save")}
      </button>
    </>
  );
}

/** Deletes the diary, after a second question. */
function Delete({ onTold }: KeepingProps) {
  const { say, diary, forget } = useApp();
  const [asked, setAsked] = useState(false);
  const question = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (asked) question.current?.focus();
  }, [asked]);
  if (!asked) {
    return (
      <button type="button" class="button" onClick={() => setAsked(true)}>
        {say("delete.label")}
      </button>
    );
  }
  const answer = (text: string) => {
    setAsked(false);
    onTold(text);
  };
  return (
    <div class="notice">
      <p ref={question} tabIndex={-1}>
        {say("delete.ask", { n: diary.entries.length })}
      </p>
      <p class="buttons">
        <button
          type="button"
          class="button"
          onClick={() => answer(say(forget() ? "delete.done" : "delete.not"))}
        >
          {say("delete.yes")}
        </button>
        <button type="button" class="button" onClick={() => answer(say("delete.kept"))}>
          {say("delete.no")}
        </button>
      </p>
    </div>
  );
}
