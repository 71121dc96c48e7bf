using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;
using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Cli.Commands;

/// <summary>A show that is changed, and where it goes.</summary>
/// <param name="Path">The file, or that of standard input.</param>
/// <param name="Done">What is done to it, such as "pinned".</param>
/// <param name="OutPath">The file for the changed show; null for none.</param>
/// <param name="IsInPlace">True when it takes the place of the file.</param>
/// <param name="IsDry">True when nothing is written.</param>
internal sealed record EditJob(string Path, string Done, string? OutPath, bool IsInPlace, bool IsDry)
{
    /// <summary>Changes the show and tells what was changed.</summary>
    /// <param name="input">The show.</param>
    /// <param name="otherInputs">Further files that were read and must not be written over.</param>
    /// <param name="change">The change: the show, the edits that make it, one line that says how much, and the account.</param>
    /// <param name="console">Where it is told.</param>
    public void Run(ShowToEdit input, IReadOnlyList<string> otherInputs, Func<Change> change, CliConsole console)
    {
        var outPath = IsInPlace ? Path : OutPath;
        using var target = outPath is null ? null : OutputFile.Begin(outPath, IsInPlace ? otherInputs : [Path, .. otherInputs]);
        var made = change();
        var edited = made.Edits.IsEmpty ? null : ShowText.Edit(input.Utf8.Span, made.Edits, made.Show);
        var utf8 = edited?.Utf8 ?? input.Utf8;
        if (!IsDry && outPath is null)
        {
            console.Output.Write(utf8.Span);
            CliRunner.Say(console, $"{made.Heading}; use --dry-run to see each of them.");
        }
        else
        {
            target?.Content.Write(utf8.Span);
            console.Output.Write(Texts.Utf8.GetBytes(made.Account));
            target?.Commit();
        }

        if (edited is { IsRewritten: true } && !IsDry)
        {
            CliRunner.Say(console, "the whole document is written anew, because the change could not be written into its text; its layout is not kept.");
        }
    }

    internal sealed record Change(Show Show, ValueList<ShowEdit> Edits, string Heading, string Account);
}
