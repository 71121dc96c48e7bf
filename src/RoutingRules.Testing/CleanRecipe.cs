using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>What a clean show holds, before anything is numbered; shrinks entry by entry.</summary>
internal sealed record CleanRecipe
{
    /// <summary>Slots in a block, at console and boxes.</summary>
    public required int Block { get; init; }

    /// <summary>How each box routes; 1 to 3 boxes.</summary>
    public required ValueList<BoxRouting> Boxes { get; init; }

    public required bool HasMains { get; init; }

    public required bool HasLinks { get; init; }

    /// <summary>Whether the console has factory routes, which the patch then has to override.</summary>
    public required bool HasFactory { get; init; }

    public ValueList<FeedRecipe> Feeds { get; init; }

    public ValueList<LineRecipe> Lines { get; init; }

    public static CleanRecipe Make(Dice dice)
    {
        var boxes = dice.Grow(1, 3);
        return new CleanRecipe
        {
            Block = dice.Pick([2, 4, 8]),
            Boxes = [.. Enumerable.Range(0, boxes).Select(_ => dice.Pick([BoxRouting.Fixed, BoxRouting.Clearable, BoxRouting.Free]))],
            HasMains = dice.Chance(70),
            HasLinks = dice.Chance(70),
            HasFactory = dice.Chance(50),
            Feeds = [.. Enumerable.Range(0, dice.Grow(0, 6)).Select(_ => Feed(dice, boxes))],
            Lines =
            [
                .. Enumerable
                    .Range(0, dice.Grow(0, 6))
                    .Select(_ => new LineRecipe(dice.Roll(0, boxes - 1), dice.Roll(1, 2), dice.Pick(Enum.GetValues<PhantomNeed>()), dice.Chance(50))),
            ],
        };
    }

    public IEnumerable<CleanRecipe> Smaller() =>
        [
            .. Enumerable.Range(0, Feeds.Count).Select(i => this with { Feeds = ProfileShrinker.Without(Feeds, i) }),
            .. Enumerable.Range(0, Lines.Count).Select(i => this with { Lines = ProfileShrinker.Without(Lines, i) }),
            .. Boxes.Count > 1 ? [WithoutLastBox()] : Array.Empty<CleanRecipe>(),
            .. new[] { this with { HasMains = false }, this with { HasLinks = false }, this with { HasFactory = false }, this with { Block = 2 } }.Where(one =>
                one != this
            ),
        ];

    private CleanRecipe WithoutLastBox()
    {
        var last = Boxes.Count - 1;
        return this with
        {
            Boxes = [.. Boxes.AsSpan()[..last]],
            Feeds = [.. Feeds.Where(feed => !feed.Boxes.Contains(last))],
            Lines = [.. Lines.Where(line => line.Box != last)],
        };
    }

    private static FeedRecipe Feed(Dice dice, int boxes) =>
        new(
            dice.Pick([FeedRole.Monitor, FeedRole.InEar, FeedRole.Fill, FeedRole.Sub]),
            dice.Roll(1, 2),
            [.. dice.Shuffle(Enumerable.Range(0, boxes)).Take(dice.Roll(1, Math.Min(2, boxes)))],
            dice.Roll(0, 2)
        );
}
