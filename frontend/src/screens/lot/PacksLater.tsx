/** The chart of the packs weighed so far, fetched beside the check and not before it. */
import { useSignal } from "@preact/signals";
import type { ComponentType } from "preact";
import { useEffect } from "preact/hooks";
import type { Fill } from "../../calc/fills.ts";

type Drawing = ComponentType<{ fill: Fill }>;

/** Weighing goes on without it where it cannot be fetched. */
export function PacksLater({ fill }: { fill: Fill }) {
  const fetched = useSignal<{ Drawing: Drawing } | null>(null);
  useEffect(() => {
    import("../charts/PacksSoFar.tsx").then(
      ({ PacksSoFar }) => {
        fetched.value = { Drawing: PacksSoFar };
      },
      () => undefined,
    );
  }, [fetched]);
  if (fetched.value === null) return null;
  const { Drawing } = fetched.value;
  return <Drawing fill={fill} />;
}
