using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Reports in-ear outputs and transmitter inputs that carry the main mix, talkback or a bare input instead of an in-ear mix.</summary>
/// <remarks>One finding for each feed, and one for each run of transmitter inputs; the rules about single feeds and stray outputs leave these out.</remarks>
public sealed class InEarCarriesOther : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } = new()
    {
        Id = "RR9003",
        Name = "in-ear-carries-other",
        Title = "Wrong and dangerous signal in somebody's ears",
        Family = RuleFamily.Hearing,
        Severity = Severity.Error,
        Checks = "Where an in-ear feed is pinned, and at the inputs of in-ear transmitters, there is no main mix, no talkback, click or comms bus and no bare input that no in-ear feed names.",
        Why = "These signals are not limited and levelled for ears: a main mix or an open microphone at line level can harm hearing in a moment.",
        Remedy = "Have the earpieces taken out, mute the transmitter, then patch the in-ear mix back and bring it up at low level. Sound exposure limits and local rules apply.",
        Source = "common practice, no source; WHO venues standard and NIOSH for exposure",
        Fixability = Fixability.Manual,
        Reads = ModelSlices.Devices | ModelSlices.Routes | ModelSlices.Feeds,
    };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var intentions = Intentions.Of(context);
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                if (EarSources.At(context, intentions, demand, out var position) is { IsNone: false } source)
                {
                    var at = context.Address(demand.Allowed[0] + position);
                    context.Report(
                        $"{at} is for in-ear feed '{feed.DisplayName}' but carries {context.Address(source)}, {EarSources.Danger(context, intentions, source)}.",
                        $"/feeds/{feed.Index}/to/{entry}",
                        Entity.Of("output", at),
                        Entity.Of("feed", feed.Model.Id));
                    break;
                }
            }
        }

        var racks = new SinkRuns();
        foreach (var (input, source) in EarSources.AtRacks(context, intentions))
        {
            racks.Add(input, source, 0, 0);
        }

        foreach (var run in racks.IsEmpty ? [] : racks.Merge(context))
        {
            var inputs = context.Address(run.Sink, run.Width);
            context.Report(
                $"{inputs} of an in-ear transmitter {PlainText.Verb(inputs, "carries", "carry")} {context.Address(run.Source, run.Width)}, {EarSources.Danger(context, intentions, run.Source)}, and no in-ear feed asks for it.",
                $"/rig/devices/{context.DeviceOf(run.Sink).Index}",
                Entity.Of("input", inputs));
        }
    }
}
