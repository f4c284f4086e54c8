/** What a day, or a part of it, taken by one exercise closes to others on other days. */
import type { Model } from "./model.ts";
import { DAYS, SLOTS } from "./problem.ts";

/** `[(e * 7 + day) * E + f]`: days closed to f, whatever the part, once e is done on a day. */
export function blockedDays(model: Model): Int32Array {
  const count = model.exercises.length;
  const blocked = new Int32Array(count * DAYS * count);
  for (let e = 0; e < count; e++) {
    for (let f = 0; f < count; f++) {
      if (e === f) continue;
      for (let day = 0; day < DAYS; day++) {
        let open = 0;
        for (let t = 3 * day; t < 3 * day + 3; t++) {
          if ((((model.domain[e] ?? 0) >> t) & 1) === 0) continue;
          open |= (model.domain[f] ?? 0) & ~(model.forbid[(e * SLOTS + t) * count + f] ?? 0);
        }
        let closed = 0;
        for (let other = 0; other < DAYS; other++) {
          if (other !== day && ((open >> (3 * other)) & 7) === 0) closed |= 1 << other;
        }
        blocked[(e * DAYS + day) * count + f] = closed;
      }
    }
  }
  return blocked;
}

/**
 * By exercise: whether its hours apart from itself or another depend on the parts of two days, so
 * that choosing days alone cannot tell whether they can be kept.
 */
export function tangledExercises(model: Model): boolean[] {
  const count = model.exercises.length;
  return model.exercises.map((_, e) => {
    for (let t = 0; t < SLOTS; t++) {
      if ((((model.domain[e] ?? 0) >> t) & 1) === 0) continue;
      const day = 7 << (3 * Math.floor(t / 3));
      for (let f = 0; f < count; f++) {
        const domain = model.domain[f] ?? 0;
        const closed = (model.forbid[(e * SLOTS + t) * count + f] ?? 0) & domain & ~day;
        if (closed !== 0) return true;
      }
    }
    return false;
  });
}
