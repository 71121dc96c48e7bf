using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Fixing;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Tells what was written down as points.</summary>
public static class PinReport
{
    /// <summary>One line that says how many.</summary>
    /// <param name="result">What pinning came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException"><paramref name="result"/> is null.</exception>
    public static string Heading(PinResult result, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(result);
        var open = result.Open.IsEmpty ? "" : string.Create(CultureInfo.InvariantCulture, $", {result.Open.Count} not served and left open");
        return $"{PlainText.Count(result.Pinned.Count, "place")} {(isDry ? "would be pinned" : "pinned")}{open}";
    }

    /// <summary>The account in words, for people; lines end with LF, and characters that could steer a terminal are written out.</summary>
    /// <param name="path">What to call the document.</param>
    /// <param name="result">What pinning came to.</param>
    /// <param name="isDry">True when nothing was written.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Text(string path, PinResult result, bool isDry)
    {
        ArgumentNullException.ThrowIfNull(path);
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{PlainText.Show(path)}: {Heading(result, isDry)}\n");
        foreach (var pinned in result.Pinned)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {PlainText.Show(pinned.Demand)} at {PlainText.Show(pinned.At.ToString())}\n");
        }

        foreach (var open in result.Open)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {PlainText.Show(open)} is not served; assign it first\n");
        }

        return text.ToString();
    }
}
