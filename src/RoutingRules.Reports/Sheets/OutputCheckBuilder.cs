using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>The list of mixes to check.</summary>
internal sealed class OutputCheckBuilder(SheetFacts facts, SheetSelection selection)
{
    public ValueList<OutputCheck> Build()
    {
        var feeds = facts.Show.Feeds.Where(selection.Concerns).ToArray();
        var ears = feeds.Where(IsInEar);
        var others = feeds.Where(feed => !IsInEar(feed));
        return ears.Concat(others).SelectMany(feed => Enumerable.Range(0, Math.Max(feed.Width, 1)).Select(position => Row(feed, position))).ToValueList();
    }

    private OutputCheck Row(FeedNode feed, int position)
    {
        var model = feed.Model;
        var source = feed.Source + position;
        return new OutputCheck
        {
            Id = model.Id,
            Number = Number(feed, position),
            Announce = $"{Number(feed, position)}, {feed.DisplayName}{(feed.Width < 2 ? "" : position == 0 ? ", left" : ", right")}",
            Name = SheetWords.Half(feed.DisplayName, feed.Width, position),
            Role = model.Role,
            IsInEar = IsInEar(feed),
            Source = source.IsNone ? model.Source.ToString() : facts.Place(source).ToString(),
            SourceLabel = source.IsNone ? null : facts.Label(source),
            Places = Enumerable.Range(0, model.To.Count).Select(entry => Place(feed, entry, position)).ToValueList(),
            Person = model.Person,
            Pack = model.Pack,
            Position = model.Position,
            Notes = model.Notes,
            How = SheetWords.How(model.Role, IsInEar(feed), model.Person, model.Limiter),
        };
    }

    /// <summary>The group and number as they stand on the console: what people call a mix over the talkback.</summary>
    private string Number(FeedNode feed, int position)
    {
        var source = feed.Source + position;
        var (group, mark) = source.IsNone
            ? (feed.Model.Source.Group.Value, SheetWords.Number(feed.Model.Source.First + position))
            : (facts.Place(source).Group.Value, facts.Place(source).Mark);
        return string.Concat(group[..1].ToUpperInvariant(), group.AsSpan(1), " ", mark);
    }

    /// <summary>In-ear feeds first, then others that name a person or a pack.</summary>
    public ValueList<SheetPack> Packs()
    {
        var feeds = facts.Show.Feeds.Where(selection.Concerns).ToArray();
        return feeds
            .Where(IsInEar)
            .Concat(feeds.Where(feed => !IsInEar(feed) && (feed.Model.Person ?? feed.Model.Pack) is not null))
            .Select(Pack)
            .ToValueList();
    }

    private SheetPack Pack(FeedNode feed) =>
        new()
        {
            Id = feed.Model.Id,
            Mix = feed.DisplayName,
            Role = feed.Model.Role,
            IsInEar = IsInEar(feed),
            Person = feed.Model.Person,
            Pack = feed.Model.Pack,
            Position = feed.Model.Position,
            Source = facts.Address(feed.Model.Source),
            Limiter = feed.Model.Limiter,
            Outputs = Enumerable
                .Range(0, feed.Model.To.Count)
                .SelectMany(entry => Enumerable.Range(0, Math.Max(feed.Width, 1)).SelectMany(position => Place(feed, entry, position).Arrives))
                .ToValueList(),
        };

    private bool IsInEar(FeedNode feed) => EarDemands.IsInEar(facts.Show, feed);

    private OutputTick Place(FeedNode feed, int entry, int position)
    {
        var served = facts.Show.Demands[feed.FirstDemand + entry].Existing;
        return new OutputTick { Wanted = facts.Wanted(feed.Model.To[entry]), Arrives = served.IsNone ? [] : Paths(served + position) };
    }

    /// <summary>Where the demand is served, and the far end of each cable from there.</summary>
    private ValueList<SheetPath> Paths(PointIndex served)
    {
        var paths = new List<SheetPath>();
        foreach (var next in facts.Graph.Fed(served))
        {
            var end = new PointIndex(next);
            if (facts.Graph.Via(end) == HopKind.Cable)
            {
                paths.Add(new SheetPath { Places = [facts.Place(served), facts.Place(end)], Way = facts.Way(end) });
            }
        }

        return paths.Count == 0 ? [new SheetPath { Places = [facts.Place(served)] }] : paths.ToValueList();
    }
}
