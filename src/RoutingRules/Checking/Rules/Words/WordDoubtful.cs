using RoutingRules.Checking.Facts.Words;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Words;

/// <summary>Reports words of open lists that probably stand for a word that the engine knows.</summary>
/// <remarks>
/// Words that are like no known one are free to use. What other rules would find if the known word were meant is undecided until somebody says
/// which it is: see <see cref="TwoReadings"/>.
/// </remarks>
public sealed class WordDoubtful : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR1109",
            Name = "word-doubtful",
            Title = "Word that probably means another",
            Family = RuleFamily.Document,
            Severity = Severity.Warning,
            Checks =
                "Roles, parts, kinds, media, transports, connectors and levels are words that the engine knows, or words of their own: no plural, "
                + "slip of a letter or other name of a known one.",
            Why = "Rules judge a mix by what it is for: ears that are called 'iem' get none of the care that 'in-ear' gets.",
            Remedy = "Write the word that is meant, or one that cannot be taken for it.",
            Source = "common practice, no source",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        context.LookedAt(context.Feeds.Count + context.Rig.Networks.Count + context.Links.Count + context.Devices.Count);
        foreach (var word in ShowWords.Doubtful(context, subject))
        {
            var seenFrom = word.What == "part" && word.Meant is "left" or "right" ? " Parts are left and right as the audience sees them." : "";
            context.Report(
                $"{char.ToUpperInvariant(word.Name[0])}{word.Name[1..]} is no word the rules know. Did you mean '{word.Meant}'?{seenFrom}",
                word.Pointer,
                word.Of,
                Entity.Of(word.What, word.Word)
            );
        }
    }
}
