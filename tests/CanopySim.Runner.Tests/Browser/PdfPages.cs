using System.Text;
using System.Text.RegularExpressions;

namespace CanopySim.Runner.Tests.Browser;

/// <summary>What a PDF says of its pages, where its objects are written plainly, as a browser's are.</summary>
internal static partial class PdfPages
{
    /// <summary>Width and height of each page [points].</summary>
    public static IReadOnlyList<(double Width, double Height)> Sizes(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        return
        [
            .. Page().Matches(text).Select(page => MediaBox().Match(text, page.Index) is { Success: true } box
                ? (Number(box, 1), Number(box, 2))
                : throw new InvalidOperationException("a page without a size")),
        ];

        static double Number(Match match, int group) =>
            double.Parse(match.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
    }

    [GeneratedRegex("/Type\\s*/Page\\b(?!s)")]
    private static partial Regex Page();

    [GeneratedRegex("/MediaBox\\s*\\[\\s*0\\s+0\\s+([0-9.]+)\\s+([0-9.]+)\\s*\\]")]
    private static partial Regex MediaBox();
}
