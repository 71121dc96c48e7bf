using System.Globalization;
using RoutingRules.Fixing;
using RoutingRules.Rules;

namespace RoutingRules.Documents.Text;

/// <summary>Makes texts of documents safe to print on a terminal.</summary>
public static class PlainText
{
    /// <summary>
    /// The text with control characters, line separators, direction marks and what XML cannot hold written out, so that a document cannot steer a terminal
    /// or break a line.
    /// </summary>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static string Show(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return VisibleText.OfPlain(text);
    }

    /// <summary>For example <c>1 error</c> or <c>3 errors</c>.</summary>
    internal static string Count(int number, string one) => Count(number, one, one + "s");

    /// <summary>For example <c>1 feed or line</c> or <c>3 feeds or lines</c>.</summary>
    internal static string Count(int number, string one, string many) => string.Create(CultureInfo.InvariantCulture, $"{number} {(number == 1 ? one : many)}");

    /// <summary>A day as <c>2027-06-12</c>.</summary>
    internal static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The place of a finding, such as <c>a.show.json:7:9</c>.</summary>
    internal static string Place(string path, Finding finding) =>
        finding.Line is { } line ? string.Create(CultureInfo.InvariantCulture, $"{path}:{line}:{finding.Column ?? 1}") : path;

    internal static string Word(Severity severity) =>
        severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "note",
        };

    internal static string Word(FixSafety safety) =>
        safety switch
        {
            FixSafety.Safe => "safe",
            FixSafety.Unsafe => "unsafe",
            _ => "manual",
        };
}
