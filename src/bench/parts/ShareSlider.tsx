import { Label, Slider, SliderOutput, SliderThumb, SliderTrack } from 'react-aria-components';

/** Something from none to all. */
export function ShareSlider({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  /** 0 to 1. */
  readonly value: number;
  readonly onChange: (value: number) => void;
}) {
  return (
    <Slider
      className="slider"
      value={Math.round(value * 100)}
      onChange={(percent) => onChange(percent / 100)}
      minValue={0}
      maxValue={100}
    >
      <Label>{label}</Label>
      <SliderOutput>{({ state }) => `${state.getThumbValue(0)} %`}</SliderOutput>
      <SliderTrack className="slider-track">
        <SliderThumb className="slider-thumb" />
      </SliderTrack>
    </Slider>
  );
}
