using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Points;

/// <summary>Reports transmit slots that a route fills for one device and that sound at a fixed output of another one which takes the same block.</summary>
/// <remarks>One finding for each run of neighbouring outputs. The rule about stray outputs leaves these out.</remarks>
public sealed class BlockChangeHitsOthers : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR2014",
            Name = "block-change-hits-others",
            Title = "Slot for one box sounds at another box too",
            Family = RuleFamily.Points,
            Severity = Severity.Warning,
            Severities = [Severity.Error, Severity.Warning],
            Checks =
                "A slot that a route fills for one device does not come out of a fixed output of another device in the same stream where no feed "
                + "wants it; an error for mains and in-ears.",
            Why = "Boxes with fixed outputs play the whole block: a late change made for one of them is heard at the other as well.",
            Remedy =
                "Give the second box a block of its own, or move the source to a slot whose output is free at both boxes; turn the second output down first.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(StrayOutputs.Shared(context));
        var found = StrayOutputs.Find(context);
        Intentions? intentions = null;
        foreach (var run in found.IsEmpty ? [] : found.Merge(context))
        {
            if (run.Tag == StrayOutputs.SharedBlock)
            {
                Report(context, intentions ??= Intentions.Of(context), run);
            }
        }
    }

    private static void Report(RuleContext context, Intentions intentions, SinkRun run)
    {
        var outputs = context.Address(run.Sink, run.Width);
        var sources = context.Address(run.Source, run.Width);
        var group = context.GroupOf(StrayOutputs.Slot(context, run.Sink));
        var slot = context.NumberOf(StrayOutputs.Slot(context, run.Sink)) - 1;
        var block = context.Address(StrayOutputs.Slot(context, run.Sink) + -(slot % group.BlockSize), group.BlockSize);
        var other = context.Address(StrayOutputs.OtherDevice(context, intentions, run.Sink));
        var isGrave = false;
        for (var position = 0; position < run.Width; position++)
        {
            foreach (var (_, feed) in intentions.FeedsOf(run.Source + position))
            {
                isGrave |= feed.Model.Role == FeedRole.Main || feed.Model.Role == FeedRole.InEar;
            }
        }

        context.ReportAs(
            isGrave ? Severity.Error : Severity.Warning,
            $"{sources} {Wording.Verb(sources, "is", "are")} in block {block} for {other}, but {outputs} {Wording.Verb(outputs, "takes", "take")} "
                + $"the same block and {Wording.Verb(outputs, "plays it", "play them")} too, where no feed wants {Wording.Verb(outputs, "it", "them")}.",
            StrayOutputs.Pointer(context, run.Sink),
            Entity.Of("output", outputs),
            Entity.Of("source", sources)
        );
    }
}
