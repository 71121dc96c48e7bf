namespace RoutingRules.Cli.Input;

/// <summary>What a command line says about the configuration.</summary>
/// <param name="Path">The file of <c>--config</c>; null when it was not given.</param>
/// <param name="IsNone"><c>--no-config</c> was given.</param>
/// <param name="IsQuiet">Do not tell which file was found.</param>
internal sealed record ConfigChoice(string? Path, bool IsNone, bool IsQuiet);
