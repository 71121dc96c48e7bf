using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Reporting.Sheets;

/// <summary>The list of mixes to check.</summary>
internal sealed class OutputCheckBuilder(SheetFacts facts, SheetSelection selection)
{
    public ValueList<OutputCheck> Build()
    {
        var feeds = facts.Show.Feeds.Where(selection.Concerns).ToArray();
        var ears = feeds.Where(feed => feed.Model.Role == FeedRole.InEar);
        var others = feeds.Where(feed => feed.Model.Role != FeedRole.InEar);
        return ears.Concat(others).SelectMany(feed => Enumerable.Range(0, Math.Max(feed.Width, 1)).Select(position => Row(feed, position))).ToValueList();
    }

    private OutputCheck Row(FeedNode feed, int position)
    {
        var model = feed.Model;
        var source = feed.Source + position;
        return new OutputCheck
        {
            Name = SheetWords.Half(feed.DisplayName, feed.Width, position),
            Role = model.Role,
            Source = source.IsNone ? model.Source.ToString() : facts.Place(source).ToString(),
            SourceLabel = source.IsNone ? null : facts.Label(source),
            Places = Enumerable.Range(0, model.To.Count).Select(entry => Place(feed, entry, position)).ToValueList(),
            Person = model.Person,
            Pack = model.Pack,
            Position = model.Position,
            Notes = model.Notes,
            How = SheetWords.How(model.Role, model.Person, model.Limiter),
        };
    }

    private OutputTick Place(FeedNode feed, int entry, int position)
    {
        var served = facts.Show.Demands[feed.FirstDemand + entry].Existing;
        return new OutputTick
        {
            Wanted = facts.Wanted(feed.Model.To[entry]),
            Arrives = served.IsNone ? null : Path(served + position),
        };
    }

    /// <summary>Where the demand is served, and the far ends of the cables from there.</summary>
    private SheetPath Path(PointIndex served)
    {
        var places = new List<SheetPlace> { facts.Place(served) };
        var ways = new List<string>();
        foreach (var next in facts.Graph.Fed(served))
        {
            var end = new PointIndex(next);
            if (facts.Graph.Via(end) == HopKind.Cable)
            {
                places.Add(facts.Place(end));
                if (facts.Way(end) is { } way)
                {
                    ways.Add(way);
                }
            }
        }

        return new SheetPath { Places = places.ToValueList(), Way = ways.Count == 0 ? null : string.Join(", ", ways) };
    }
}
