using SixLabors.ImageSharp;
using SixLabors.ImageSharp.Formats.Png;
using SixLabors.ImageSharp.PixelFormats;
using SixLabors.ImageSharp.Processing.Processors.Quantization;
using SkiaSharp;

namespace CanopySim.Drawing.Pictures;

/// <summary>PNG of 256 colors, which a report can carry: foliage in all its colors takes three times as much.</summary>
internal static class PalettePng
{
    /// <param name="bitmap">Red, green, blue, alpha; opaque.</param>
    public static byte[] Of(SKBitmap bitmap)
    {
        using var image = Image.LoadPixelData<Rgba32>(bitmap.GetPixelSpan(), bitmap.Width, bitmap.Height);
        using var bytes = new MemoryStream();
        image.SaveAsPng(bytes, new PngEncoder
        {
            ColorType = PngColorType.Palette,
            BitDepth = PngBitDepth.Bit8,
            CompressionLevel = PngCompressionLevel.BestCompression,
            FilterMethod = PngFilterMethod.None,
            Quantizer = new WuQuantizer(new QuantizerOptions { Dither = null, MaxColors = 256 }),
        });
        return bytes.ToArray();
    }
}
