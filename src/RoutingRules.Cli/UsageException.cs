namespace RoutingRules.Cli;

/// <summary>The tool was called wrongly, or something it needs cannot be read or written; the message names the place and the remedy.</summary>
internal sealed class UsageException(string message) : Exception(message);
