using System.CommandLine;
using RoutingRules.Cli.Commands;

namespace RoutingRules.Cli;

/// <summary>A command with examples for its help page.</summary>
internal sealed class ToolCommand(string name, string description, params string[] examples) : Command(name, description)
{
    /// <summary>Lines to type, each followed by what it does.</summary>
    public IReadOnlyList<string> Examples { get; } = examples;

    /// <summary>Adds options that commands have together.</summary>
    public void Add(IOptionGroup group)
    {
        foreach (var option in group.Options)
        {
            Options.Add(option);
        }
    }
}
