/** Spoken words, only with voices that live on the device: nothing said goes over the net. */

export interface Speech {
  /** Call it in a tap: some browsers let a page speak only from then on. */
  unlock(): void;
  /** Whether the device has a voice of its own for the language. */
  state(): "on" | "missing";
  /** Says a text in place of what is being said. */
  say(text: string): void;
  stop(): void;
}

export interface SpeechPlace {
  readonly speechSynthesis?: SpeechSynthesis;
  readonly SpeechSynthesisUtterance?: typeof SpeechSynthesisUtterance;
}

/** The speech of a window in a BCP 47 language; all that fails in it is silence. */
export function makeSpeech(place: SpeechPlace, language: string): Speech {
  const { speechSynthesis: synthesis, SpeechSynthesisUtterance: Utterance } = place;
  let voice: SpeechSynthesisVoice | undefined;
  let unlocked = false;

  /** Voices may come late, and some browsers never say so: asked for until there is one. */
  const found = (): SpeechSynthesisVoice | undefined => {
    voice ??= quietly(() => localVoice(synthesis?.getVoices() ?? [], language));
    return voice;
  };
  const stop = (): void => {
    quietly(() => {
      if (synthesis?.speaking || synthesis?.pending) synthesis.cancel();
    });
  };
  const speak = (text: string, volume: number): void => {
    const speaker = found();
    if (!Utterance || !speaker) return;
    quietly(() => {
      const utterance = new Utterance(text);
      utterance.voice = speaker;
      utterance.lang = speaker.lang;
      utterance.volume = volume;
      synthesis?.speak(utterance);
      unlocked = true;
    });
  };
  return {
    unlock() {
      if (!unlocked) speak(" ", 0);
    },
    state: () => (Utterance && found() ? "on" : "missing"),
    say(text) {
      stop();
      speak(text, 1);
    },
    stop,
  };
}

/** The voice on the device that is nearest to the language: its region, then the device's usual one, then any. */
function localVoice(
  voices: readonly SpeechSynthesisVoice[],
  language: string,
): SpeechSynthesisVoice | undefined {
  const wanted = tag(language);
  const base = (text: string): string => tag(text).split("-")[0] ?? "";
  const fitting = voices.filter(
    (voice) => voice.localService === true && base(voice.lang) === base(language),
  );
  return (
    fitting.find((voice) => tag(voice.lang) === wanted) ??
    fitting.find((voice) => voice.default) ??
    fitting[0]
  );
}

/** Some devices write de_DE. */
const tag = (text: string): string => text.toLowerCase().replaceAll("_", "-");

function quietly<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
