/** The frame of every page of a check: which instrument, how far along, back and the main key. */
import type { ComponentChildren } from "preact";
import { BackKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { CHECK } from "../../text/checks.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import type { Checking } from "./use_check.ts";

interface CheckFrameProps {
  checking: Checking;
  title: string;
  calm?: string | undefined;
  plate?: ComponentChildren;
  /** Beside the work on a wide screen, below it on a phone. */
  side?: ComponentChildren;
  keypad?: ComponentChildren;
  /** Beside the main key, such as Skip. */
  second?: ComponentChildren;
  main: ComponentChildren;
  children: ComponentChildren;
}

/** Back keeps what is read; on the first page it goes to the sheet. */
export function CheckFrame(props: CheckFrameProps) {
  const { checking } = props;
  const { instrument, pages, page } = checking;
  const at = pages.indexOf(page);
  return (
    <Frame
      where={<span class="rec">{instrument.name}</span>}
      title={props.title}
      aside={CHECK.of(at + 1, pages.length)}
      gauge={<HeadGauge />}
      calm={props.calm}
      hasKeypad={Boolean(props.keypad)}
      benchName={CHECK.bench}
      plate={props.plate}
      side={props.side}
      bench={
        <>
          {props.keypad}
          <Foot>
            {at === 0 ? (
              <BackKey href={`#/instruments/${instrument.id}`} />
            ) : (
              <BackKey onPress={checking.goBack} />
            )}
            {props.second}
            {props.main}
          </Foot>
        </>
      }
    >
      {props.children}
    </Frame>
  );
}
