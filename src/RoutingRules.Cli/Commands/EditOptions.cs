using System.CommandLine;
using RoutingRules.Cli.Input;

namespace RoutingRules.Cli.Commands;

/// <summary>The options of commands that change a show: whether, and where the changed one goes.</summary>
/// <param name="done">What is done to the show, such as "pinned".</param>
internal sealed class EditOptions(string done) : IOptionGroup
{
    private readonly Option<bool> dryRun = new("--dry-run") { Description = "Change nothing; say what would be written." };
    private readonly Option<string?> @out = new("--out")
    {
        HelpName = "FILE",
        Description = $"Write the {done} show to a file; without it the show goes to standard output.",
    };
    private readonly Option<bool> inPlace = new("--in-place") { Description = $"Write the {done} show over the file itself." };

    public IReadOnlyList<Option> Options => [dryRun, @out, inPlace];

    /// <summary>What was chosen for a file.</summary>
    /// <exception cref="UsageException">The choices exclude one another.</exception>
    public EditJob Read(ParseResult parsed, string path)
    {
        var job = new EditJob(path, done, parsed.GetValue(@out), parsed.GetValue(inPlace), parsed.GetValue(dryRun));
        var problem =
            (job.OutPath is not null ? 1 : 0) + (job.IsInPlace ? 1 : 0) + (job.IsDry ? 1 : 0) > 1
                ? "--out, --in-place and --dry-run exclude one another; take one of them."
            : job.IsInPlace && job.Path == InputDocument.StandardInput ? "standard input cannot be written in place; use --out FILE."
            : null;
        return problem is null ? job : throw new UsageException(problem);
    }
}
