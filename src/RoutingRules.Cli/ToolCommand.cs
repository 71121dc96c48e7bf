using System.CommandLine;

namespace RoutingRules.Cli;

/// <summary>A command with examples for its help page.</summary>
internal sealed class ToolCommand(string name, string description, params string[] examples) : Command(name, description)
{
    /// <summary>Lines to type, each followed by what it does.</summary>
    public IReadOnlyList<string> Examples { get; } = examples;
}
