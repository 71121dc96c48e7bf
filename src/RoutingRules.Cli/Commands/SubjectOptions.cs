using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Resolving;

namespace RoutingRules.Cli.Commands;

/// <summary>The options that choose some of the feeds and lines.</summary>
internal sealed class SubjectOptions : IOptionGroup
{
    private readonly Option<string[]> only = new("--only")
    {
        HelpName = "FEED-OR-LINE",
        Description = "Only this feed or line, by its id or its name; may be given several times. Without it, all.",
        DefaultValueFactory = _ => [],
    };

    public IReadOnlyList<Option> Options => [only];

    /// <summary>The ids of what was chosen; null for all.</summary>
    /// <exception cref="UsageException">There is no such feed or line, or several have the name.</exception>
    public IReadOnlyCollection<string>? Of(ParseResult parsed, Func<ResolvedShow> resolve)
    {
        var named = parsed.GetRequiredValue(only);
        if (named.Length == 0)
        {
            return null;
        }

        var show = resolve();
        var called = new CalledByName(show);
        var ids = show.Feeds.Select(feed => feed.Model.Id.Value).Concat(show.Lines.Select(line => line.Model.Id.Value)).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. named.Select(name =>
                called.Subject(name) is var id && ids.Contains(id) ? id : throw new UsageException($"--only: there is no feed or line '{name}'.")
            ),
        ];
    }
}
