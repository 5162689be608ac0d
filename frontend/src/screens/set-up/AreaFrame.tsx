/** The frame of a list of what is set up: what it is for, the list, and the way to a new one. */
import type { ComponentChildren } from "preact";
import { type Choice, Choices } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { goTo } from "../../state/route.ts";
import { isStillLoading } from "../../state/sheets.ts";
import { AREAS, SET_UP } from "../../text/set_up.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { whoMayWrite } from "./who.ts";
import "./set_up.css";

interface AreaFrameProps {
  /** As in the address and in the texts. */
  area: string;
  items: readonly Choice[];
  /** Whether this member may add one. */
  mayAdd: boolean;
  /** Above the list. */
  children?: ComponentChildren;
  /** Below it. */
  below?: ComponentChildren;
}

export function AreaFrame({ area, items, mayAdd, children, below }: AreaFrameProps) {
  const words = AREAS[area];
  return (
    <Frame
      where={SET_UP.where}
      title={words?.title ?? ""}
      gauge={<HeadGauge />}
      calm={words?.why}
      benchName={SET_UP.bench}
      bench={
        <Foot>
          <BackKey href="#/set-up" />
          <MainKey
            words={words?.new_one}
            href={`#/set-up/${area}/new`}
            notReady={mayAdd ? null : whoMayWrite()}
          />
        </Foot>
      }
    >
      {children}
      <div class="set-up-list">
        <Choices
          name={words?.title ?? ""}
          items={items}
          chosen={null}
          onChoose={(id) => goTo(`/set-up/${area}/${id}`)}
          none={isStillLoading.value ? SET_UP.loading : words?.none}
        />
      </div>
      {below}
    </Frame>
  );
}
