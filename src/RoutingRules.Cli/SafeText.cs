using System.Text.RegularExpressions;
using RoutingRules.Documents.Text;

namespace RoutingRules.Cli;

/// <summary>Texts of documents and file names, made safe to print.</summary>
internal static partial class SafeText
{
    /// <summary>
    /// The text with everything but line breaks, tabulators and page breaks that could steer a terminal written out. Of JSON this is the same JSON.
    /// </summary>
    public static string Show(string text) => Piece().Replace(text, match => PlainText.Show(match.Value));

    // A carriage return alone goes back and writes over what stands there.
    [GeneratedRegex("[^\\n\\t\\f\\r]+|\\r(?!\\n)", RegexOptions.CultureInvariant)]
    private static partial Regex Piece();
}
