namespace RoutingRules.Reports.FindingReports;

/// <summary>The formats that come with the engine. A plain list, so that nothing is found by scanning.</summary>
public static class ReportFormats
{
    /// <summary>The formats, those for people and the native one first.</summary>
    public static IReadOnlyList<ReportFormat> All { get; } =
    [
        new("text", "for people at a terminal", static (output, options) => new TextReport(output, options)),
        new("json", "for programs, after report.schema.json", static (output, options) => new JsonReport(output, options)),
        new("sarif", "for code reviews and finding viewers (SARIF 2.1.0)", static (output, options) => new SarifReport(output, options)),
        new("junit", "for test runners (JUnit XML)", static (output, options) => new JUnitReport(output, options)),
        new("github", "annotations of a GitHub workflow", static (output, options) => new GitHubReport(output, options)),
        new("markdown", "for people in a text that shows tables", static (output, options) => new MarkdownReport(output, options)),
        new("html", "for people in a browser or on paper", static (output, options) => new HtmlReport(output, options)),
    ];

    /// <summary>The format of a name; null when there is none.</summary>
    public static ReportFormat? Find(string name)
    {
        foreach (var format in All)
        {
            if (format.Name == name)
            {
                return format;
            }
        }

        return null;
    }
}
