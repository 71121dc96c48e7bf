using RoutingRules.Plugins;

namespace RoutingRules.Cli;

/// <summary>The streams that the tool talks through.</summary>
/// <param name="Input">Standard input.</param>
/// <param name="Output">Standard output: the result and nothing else.</param>
/// <param name="Error">Standard error: messages.</param>
internal sealed record CliConsole(Stream Input, Stream Output, TextWriter Error)
{
    /// <summary>True when a person reads standard output from a terminal.</summary>
    public bool IsTerminal { get; init; }

    /// <summary>Plugins that every engine of the run gets.</summary>
    public IReadOnlyList<RoutingPlugin> Plugins { get; init; } = [];

    /// <summary>Tells which day it is where the tool runs.</summary>
    public Func<DateOnly> Today { get; init; } = static () => DateOnly.FromDateTime(DateTime.Now);
}
