/** Timers that run and what wants a check, fetched beside the day: the first screen does not wait for it. */
import { useSignal } from "@preact/signals";
import type { ComponentType } from "preact";
import { useEffect } from "preact/hooks";

/** The day is whole without it where it cannot be fetched. */
export function ToCheckLater() {
  const fetched = useSignal<{ Row: ComponentType } | null>(null);
  useEffect(() => {
    import("./Later.tsx").then(
      ({ Later }) => {
        fetched.value = { Row: Later };
      },
      () => undefined,
    );
  }, [fetched]);
  if (fetched.value === null) return null;
  const { Row } = fetched.value;
  return <Row />;
}
