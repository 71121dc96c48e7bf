using System.CommandLine;

namespace RoutingRules.Cli.Commands;

/// <summary>Options that commands have together, made anew for each.</summary>
internal interface IOptionGroup
{
    /// <summary>The options in the order of the help page.</summary>
    IReadOnlyList<Option> Options { get; }
}
