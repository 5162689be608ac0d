/** The key to a chart, fetched beside a sheet and not before it. */
import { useSignal } from "@preact/signals";
import type { ComponentType } from "preact";
import { useEffect } from "preact/hooks";
import type { ChartOf } from "../charts/ChartKeys.tsx";

type Key = ComponentType<{ of: ChartOf }>;

/** The sheet is whole without it where it cannot be fetched. */
export function ChartKeyLater({ of }: { of: ChartOf }) {
  const fetched = useSignal<{ Key: Key } | null>(null);
  useEffect(() => {
    import("../charts/ChartKeys.tsx").then(
      ({ ChartKey }) => {
        fetched.value = { Key: ChartKey };
      },
      () => undefined,
    );
  }, [fetched]);
  if (fetched.value === null) return null;
  const { Key } = fetched.value;
  return <Key of={of} />;
}
