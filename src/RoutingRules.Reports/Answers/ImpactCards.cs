using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Lays out the card of a loss: who goes silent, what to plug and load, what to check, what stays silent.</summary>
internal sealed partial class ImpactCards(ImpactWords words)
{
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
            HasAllCautions = false,
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
        if (loss.Plan is { } paid)
        {
            AddFilled(page, Payers(loss, paid));
        }

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

        if (!plan.NewErrors.IsEmpty)
        {
            page.Facts.Add($"Mind: {string.Join(" ", plan.NewErrors)}");
        }

        AddSteps(page, loss, plan);
        AddChecks(page, loss, plan);
        AddSilent(page, loss, plan);
        return page;
    }

    private void AddSteps(Page page, LossImpact loss, FallbackPlan plan)
    {
        var plug = new PageTable
        {
            Title = "Pull these, plug there",
            Columns = [("Plug at", 20), ("What", 28), ("Pull from", 18, "pull from "), ("Mind", 28), ("Done", 6)],
            HasBigFirst = true,
            RowColumns = 2,
            FirstPercent = 24,
        };
        var load = new PageTable
        {
            Title = "Load, device by device in this order",
            Columns = [("Device", 25), ("What", 69), ("Done", 6)],
            RowColumns = 2,
        };
        var loads = new List<(Id<Device> Device, List<string> Steps)>();
        foreach (var step in plan.Steps)
        {
            if (step.Kind is FallbackStepKind.Replug or FallbackStepKind.Pull)
            {
                plug.Rows.Add(step.Kind == FallbackStepKind.Pull ? Pull(step) : Plug(step, IsInEar(loss, step.Demand)));
            }
            else
            {
                if (loads.Count == 0 || loads[^1].Device != step.Device)
                {
                    loads.Add((step.Device, []));
                }

                loads[^1].Steps.Add(Load(step));
            }
        }

        load.Rows.AddRange(
            loads.Select(device => new PageRow
            {
                Cells = [PageLayout.Strong(words.Device(device.Device)), DevicePages.Notes(string.Join("; ", device.Steps)), PageLayout.Tick("")],
            })
        );

        if (plan.Steps.Any(step => step.IsElsewhere))
        {
            plug.Rows.Add(new PageRow { Across = "Longer cable? It is not where the document wants it: a longer cable may be needed." });
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
                [new PageLine(to.Numbers.ToString(), PageLineStyle.Strong), .. PageLayout.Cell($"{to.Group} of {words.Device(to.Device)}")],
                [
                    new PageLine(words.Demand(step.Demand!), PageLineStyle.Strong),
                    .. PageLayout.Cell(cable),
                    .. isInEar ? [new PageLine("IN-EAR", PageLineStyle.Mark)] : Array.Empty<PageLine>(),
                ],
                PageLayout.Cell(
                    step.HasOwnCable ? "" : $"{step.From!.Value.Group} {step.From.Value.Numbers}",
                    step.HasOwnCable ? "" : words.Device(step.From!.Value.Device)
                ),
                PageLayout.Cell(phantom, step.IsElsewhere ? "longer cable?" : null),
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
        var table = new PageTable
        {
            Title = "Then check, in this order, one at a time",
            Columns = [("What", 27), ("Where", 24, "at "), ("How", 43), ("Done", 6)],
            RowColumns = 2,
        };
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

    private static void AddFilled(Page page, PageTable table)
    {
        if (table.Rows.Count > 0)
        {
            page.Tables.Add(table);
        }
    }
}
