namespace RoutingRules.Cli;

/// <summary>The streams that the tool talks through.</summary>
/// <param name="Input">Standard input.</param>
/// <param name="Output">Standard output: the result and nothing else.</param>
/// <param name="Error">Standard error: messages.</param>
internal sealed record CliConsole(Stream Input, Stream Output, TextWriter Error);
