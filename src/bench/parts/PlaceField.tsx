import { LengthField, type LengthFieldProps } from './LengthField.tsx';
import { PixelField } from './PixelField.tsx';

/** A place in a pattern: a length, or pixels where its scale is not known. It may be nought or less. */
export function PlaceField({
  unit,
  ...field
}: { readonly unit: 'mm' | 'px' } & Pick<LengthFieldProps, 'label' | 'value' | 'onChange'>) {
  return unit === 'mm' ? <LengthField {...field} any /> : <PixelField {...field} />;
}
