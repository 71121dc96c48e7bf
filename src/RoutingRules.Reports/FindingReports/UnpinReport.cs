using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Fixing;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Tells what was let go of its points.</summary>
public static class UnpinReport
{
    /// <summary>One line that says how many.</summary>
    /// <param name="result">What it came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static string Heading(UnpinResult result, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(result);
        var left = result.Left.IsEmpty ? "" : string.Create(CultureInfo.InvariantCulture, $", {result.Left.Count} kept");
        return $"{PlainText.Count(result.Freed.Count, "place")} {(isDry ? "would be let free" : "let free")}{left}";
    }

    /// <summary>The account in words, for people; lines end with LF, and characters that could steer a terminal are written out.</summary>
    /// <param name="path">What to call the document.</param>
    /// <param name="result">What it came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Text(string path, UnpinResult result, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(path);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{PlainText.Show(path)}: {Heading(result, isDry)}\n");
        foreach (var freed in result.Freed)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"  {PlainText.Show(freed.Demand)} may leave {PlainText.Show(freed.At.ToString())} for another of {PlainText.Show(freed.At.Device.Value)}\n"
            );
        }

        foreach (var left in result.Left)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {PlainText.Show(left)} keeps its points: it is split over several, or only its name allows them\n");
        }

        return text.ToString();
    }
}
