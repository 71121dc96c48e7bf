using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Lays out the card of a loss: who goes silent, what to plug and load, what to check, what stays silent.</summary>
internal sealed class ImpactCards(ImpactWords words)
{
    private const int MaxNames = 40;

    /// <summary>One card.</summary>
    /// <param name="loss">The loss.</param>
    /// <param name="alike">Losses that the same card serves.</param>
    public Page Card(LossImpact loss, List<LossImpact> alike)
    {
        var names = loss.Lost.Select(thing => thing.Label ?? ImpactWords.Thing(thing)).ToArray();
        var ids = loss.Lost.Where(thing => thing.Label is not null).Select(thing => thing.Id).ToArray();
        var page = new Page
        {
            Title = $"If {string.Join(" and ", names)} {(names.Length == 1 ? "fails" : "fail")}",
            Aside = ids.Length == 0 ? null : string.Join(", ", ids),
        };
        if (alike.Count > 0)
        {
            page.Facts.Add($"The same card for the loss of {string.Join("; of ", alike.Select(other => ImpactWords.Things(other.Lost)))}.");
        }

        if (!loss.Silences.IsEmpty)
        {
            page.Facts.Add($"Silent altogether: {Wording.List(loss.Silences)}.");
        }

        page.Facts.Add($"Goes on everywhere: {ImpactWords.Kept(loss)}.");
        if (!loss.Rerouted.IsEmpty)
        {
            page.Facts.Add($"Streams that find another path by themselves: {Wording.List(loss.Rerouted.ToArray())}.");
        }

        page.Facts.AddRange(loss.Remarks);
        AddFilled(page, Silenced(loss));
        if (loss.Plan is not { } plan)
        {
            return page;
        }

        if (plan.Recovered.IsEmpty)
        {
            page.Facts.Add("No patch of what is left brings anything of it back.");
        }
        else
        {
            var plugs = plan.Moves + plan.Displaced.Count;
            page.Facts.Add(
                $"{PlainText.Count(plan.Steps.Count, "step")}: {plugs.ToString(CultureInfo.InvariantCulture)} to plug, "
                    + $"{(plan.Steps.Count - plugs).ToString(CultureInfo.InvariantCulture)} to load. Carried out on a copy of the document and traced "
                    + "there. Mute what is named here before you begin."
            );
        }

        foreach (var displaced in plan.Displaced)
        {
            page.Facts.Add(
                $"Falls silent by this plan: {words.Demand(displaced.Demand)} gives up {displaced.At} for {words.Demand(displaced.By)}, which "
                    + "matters more. Tell whoever hears it before you pull it."
            );
        }

        if (!plan.NewErrors.IsEmpty)
        {
            page.Facts.Add($"Mind: {string.Join(" ", plan.NewErrors)}");
        }

        AddSteps(page, loss, plan);
        AddChecks(page, loss, plan);
        AddSilent(page, plan);
        return page;
    }

    /// <summary>Who hears it first: in-ear feeds, then mains, then other feeds, then lines. Names alone fall silent; what is left of others is said.</summary>
    private static PageTable Silenced(LossImpact loss)
    {
        var table = new PageTable { Title = "Goes silent", Columns = [("", 16), ("Who", 84)] };
        foreach (var (title, subjects) in ImpactWords.Groups(loss))
        {
            var lost = subjects.Where(subject => subject.Fate == LossFate.Lost).Select(ImpactWords.Name).ToArray();
            var others = subjects
                .Where(subject => subject.Fate != LossFate.Lost)
                .Select(subject => $"{ImpactWords.Name(subject)}: {ImpactWords.Fate(subject)}")
                .ToArray();
            table.Rows.Add(
                new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong(title),
                        PageLayout.Cell([lost.Length == 0 ? null : $"{string.Join("; ", lost)}.", .. others.Select(other => $"{other}.")]),
                    ],
                }
            );
        }

        return table;
    }

    private void AddSteps(Page page, LossImpact loss, FallbackPlan plan)
    {
        var plug = new PageTable
        {
            Title = "Pull these, plug there",
            Columns = [("Plug at", 20), ("What", 28), ("Pull from", 18), ("Mind", 28), ("Done", 6)],
            HasBigFirst = true,
        };
        var load = new PageTable { Title = "Load", Columns = [("Device", 25), ("What", 69), ("Done", 6)] };
        foreach (var step in plan.Steps)
        {
            if (step.Kind is FallbackStepKind.Replug or FallbackStepKind.Pull)
            {
                plug.Rows.Add(step.Kind == FallbackStepKind.Pull ? Pull(step) : Plug(step, IsInEar(loss, step.Demand)));
            }
            else
            {
                load.Rows.Add(new PageRow { Cells = [PageLayout.Strong(words.Device(step.Device)), PageLayout.Cell(Load(step)), PageLayout.Tick("")] });
            }
        }

        AddFilled(page, plug);
        AddFilled(page, load);
    }

    private PageRow Pull(FallbackStep step)
    {
        var from = step.From!.Value;
        return new PageRow
        {
            Cells =
            [
                PageLayout.Cell("nowhere: it gives up its place"),
                [
                    new PageLine(words.Demand(step.Demand!), PageLineStyle.Strong),
                    .. PageLayout.Cell(step.CableTo.IsEmpty ? null : $"the cable to {string.Join(" and ", step.CableTo)}"),
                ],
                PageLayout.Cell($"{from.Group} {from.Numbers}", words.Device(from.Device)),
                PageLayout.Cell("Mute it first."),
                PageLayout.Tick(""),
            ],
        };
    }

    private PageRow Plug(FallbackStep step, bool isInEar)
    {
        var to = step.To!.Value;
        var cable =
            step.HasOwnCable ? "Its cable is there already: pull nothing."
            : step.CableTo.IsEmpty ? null
            : $"the cable to {string.Join(" and ", step.CableTo)}";
        var phantom = words.Line(step.Demand)?.Phantom switch
        {
            PhantomNeed.Required => "Phantom ON once it is plugged, channel muted.",
            PhantomNeed.Forbidden => "Phantom must be OFF there before you plug.",
            _ => null,
        };
        return new PageRow
        {
            Cells =
            [
                [new PageLine($"{to.Group} {to.Numbers}", PageLineStyle.Strong), .. PageLayout.Cell(words.Device(to.Device))],
                [
                    new PageLine(words.Demand(step.Demand!), PageLineStyle.Strong),
                    .. PageLayout.Cell(cable),
                    .. isInEar ? [new PageLine("IN-EAR", PageLineStyle.Mark)] : Array.Empty<PageLine>(),
                ],
                PageLayout.Cell(
                    step.HasOwnCable ? "" : $"{step.From!.Value.Group} {step.From.Value.Numbers}",
                    step.HasOwnCable ? "" : words.Device(step.From!.Value.Device)
                ),
                PageLayout.Cell(phantom, step.IsElsewhere ? "Not where the document wants it: a longer cable may be needed." : null),
                PageLayout.Tick(""),
            ],
        };
    }

    /// <summary>True for a demand of a feed that the loss silences in somebody's ears.</summary>
    private bool IsInEar(LossImpact loss, string? demand) =>
        words.Feed(demand) is { } feed && loss.Subjects.Any(subject => subject.IsInEar && subject.Subject == feed.Id.Value);

    private static string Load(FallbackStep step)
    {
        if (step.Route is { } route)
        {
            return route.From is { } from ? $"{route.To} takes {from}" : $"clear {route.To}";
        }

        return step.Stream is { } stream
            ? $"stream {stream.Id}: send {stream.From} to " + string.Join(", ", stream.To.Select(Receiver))
            : $"take stream {step.StreamId} away";

        static string Receiver(StreamReceiver receiver) =>
            receiver.Channels is { } channels ? $"{receiver.At} (its channels {channels})" : receiver.At.ToString();
    }

    private void AddChecks(Page page, LossImpact loss, FallbackPlan plan)
    {
        var table = new PageTable { Title = "Then check, in this order, one at a time", Columns = [("What", 27), ("Where", 24), ("How", 43), ("Done", 6)] };
        foreach (var recovered in plan.Recovered)
        {
            var how = words.Feed(recovered.Demand) is { } feed
                ? SheetWords.How(feed.Role, IsInEar(loss, recovered.Demand), feed.Person, feed.Limiter)
                : $"Scratch or speak at it; it shows {words.Line(recovered.Demand)?.To.Select(at => $"at {at}").FirstOrDefault() ?? "at its channel"}.";
            table.Rows.Add(
                new PageRow
                {
                    Cells =
                    [
                        PageLayout.Strong(words.Demand(recovered.Demand)),
                        PageLayout.Cell(recovered.To.ToString(), recovered.To == recovered.From ? "as before" : $"was {recovered.From}"),
                        PageLayout.Cell(how),
                        PageLayout.Tick(""),
                    ],
                }
            );
        }

        AddFilled(page, table);
    }

    /// <summary>One row for each reason, as a whole system often stays silent for one; so many names in a row that a page holds it.</summary>
    private void AddSilent(Page page, FallbackPlan plan)
    {
        var table = new PageTable { Title = "Stays silent", Columns = [("What", 60), ("Why", 40)] };
        foreach (var alike in plan.Unrecovered.GroupBy(unrecovered => unrecovered.Reason, StringComparer.Ordinal))
        {
            foreach (
                var some in alike
                    .GroupBy(unrecovered => unrecovered.Demand, StringComparer.Ordinal)
                    .Select(demand => Silent(demand.Key, [.. demand]))
                    .Chunk(MaxNames)
            )
            {
                table.Rows.Add(new PageRow { Cells = [PageLayout.Cell($"{string.Join("; ", some)}."), PageLayout.Cell(alike.Key)] });
            }
        }

        AddFilled(page, table);
    }

    /// <summary>A feed or line, and of a line the sinks where they are not all of them.</summary>
    private string Silent(string demand, UnrecoveredDemand[] at)
    {
        var sinks = at.Where(unrecovered => unrecovered.Sink is not null).Select(unrecovered => unrecovered.Sink.ToString()!).ToArray();
        return sinks.Length == 0 || sinks.Length == words.Line(demand)?.To.Count ? words.Demand(demand) : $"{words.Demand(demand)} at {Wording.List(sinks)}";
    }

    private static void AddFilled(Page page, PageTable table)
    {
        if (table.Rows.Count > 0)
        {
            page.Tables.Add(table);
        }
    }
}
