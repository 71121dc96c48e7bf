namespace RoutingRules.Cli;

/// <summary>Texts of documents and file names, made safe to print.</summary>
internal static class SafeText
{
    /// <summary>The text with everything but line breaks that could steer a terminal written out.</summary>
    public static string Show(string text) => string.Join('\n', text.Split('\n').Select(Reporting.PlainText.Show));
}
