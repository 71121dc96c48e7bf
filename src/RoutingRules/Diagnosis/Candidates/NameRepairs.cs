using RoutingRules.Documents.Tables;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Writes the device that was probably meant wherever routes and cables name one that is not there.</summary>
internal static class NameRepairs
{
    public static IEnumerable<OtherRepair> For(ResolvedShow show, Finding finding)
    {
        if (finding.Rule != "RR1101")
        {
            return [];
        }

        var change = new PatchChange();
        var wrong = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var route in show.Routes)
        {
            if (route.State == ConnectionState.UnknownReference)
            {
                PointRange? from = route.Model.From is { } source ? Meant(show, source, wrong) : null;
                change.Routes.Replaced[route.Index] = [route.Model with { From = from, To = Meant(show, route.Model.To, wrong) }];
            }
        }

        foreach (var cable in show.Cables)
        {
            if (cable.State == ConnectionState.UnknownReference)
            {
                change.Cables.Replaced[cable.Index] =
                [
                    cable.Model with
                    {
                        From = Meant(show, cable.Model.From, wrong),
                        To = Meant(show, cable.Model.To, wrong),
                    },
                ];
            }
        }

        return wrong.Count == 0
            ? []
            :
            [
                new OtherRepair(
                    string.Join("; ", wrong.Select(pair => $"'{pair.Key}' is written for '{pair.Value}'")),
                    Fix.Of(
                        $"Write {string.Join(", ", wrong.Select(pair => $"'{pair.Value}' for '{pair.Key}'"))}",
                        FixSafety.Unsafe,
                        change.Edits(show.Document),
                        CauseWords.Caution
                    )
                ),
            ];
    }

    private static PointRange Meant(ResolvedShow show, PointRange run, SortedDictionary<string, string> wrong)
    {
        if (
            show.Graph.Device(run.Device) is not null
            || Spelling.Nearest(run.Device.Value, show.Devices.Select(device => device.Id.Value).Order(StringComparer.Ordinal)) is not { } near
        )
        {
            return run;
        }

        wrong[run.Device.Value] = near;
        return new PointRange(new Id<Device>(near), run.Group, run.First, run.Last);
    }
}
