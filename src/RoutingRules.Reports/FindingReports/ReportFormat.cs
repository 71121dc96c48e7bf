namespace RoutingRules.Reports.FindingReports;

/// <summary>A format of reports.</summary>
/// <param name="name">The word for it on a command line.</param>
/// <param name="title">What it is for, in a few words.</param>
/// <param name="create">Starts a report on a stream that stays open.</param>
public sealed class ReportFormat(string name, string title, Func<Stream, ReportOptions, ReportWriter> create)
{
    /// <summary>The word for it on a command line, such as <c>sarif</c>.</summary>
    public string Name { get; } = name;

    /// <summary>What it is for, in a few words.</summary>
    public string Title { get; } = title;

    /// <summary>Starts a report.</summary>
    /// <param name="output">Where it is written as UTF-8; stays open.</param>
    /// <param name="options">What the report needs to know.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public ReportWriter Create(Stream output, ReportOptions options)
    {
        ArgumentNullException.ThrowIfNull(output);
        ArgumentNullException.ThrowIfNull(options);
        return create(output, options);
    }
}
