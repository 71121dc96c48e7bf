using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Testing;

/// <summary>
/// Wires a clean show by hand. Box x owns the console's transmit blocks in which output i of the box sits at position i, so that a fixed box needs no
/// route; lines travel in their input's own slot to receive blocks of their own.
/// </summary>
internal sealed partial class CleanWiring(CleanRecipe recipe)
{
    private readonly List<Feed> feeds = [];
    private readonly List<Line> lines = [];
    private readonly List<Placement> feedPlacements = [];
    private readonly List<Placement> linePlacements = [];
    private readonly List<PointLabel> labels = [];
    private readonly List<InputSettings> inputs = [];
    private readonly List<Cable> cables = [];
    private readonly int[] outputsUsed = new int[recipe.Boxes.Count];
    private readonly int[] inputsUsed = new int[recipe.Boxes.Count];

    /// <summary>What each output carries: (box, number) to console source.</summary>
    private readonly SortedDictionary<(int Box, int Number), Point> carried = [];

    /// <summary>Which channel each input feeds: (box, number) to channel.</summary>
    private readonly SortedDictionary<(int Box, int Number), int> channelOf = [];
    private int auxUsed;
    private int channelsUsed;

    public ValueList<Placement> Placements => [.. feedPlacements, .. linePlacements];

    public Show Build()
    {
        AddMains();
        foreach (var feed in recipe.Feeds)
        {
            AddFeed(feed);
        }

        foreach (var line in recipe.Lines)
        {
            AddLine(line);
        }

        return new Show
        {
            Title = "Clean",
            Rig = BuildRig(),
            Feeds = feeds.ToValueList(),
            Lines = lines.ToValueList(),
            Patch = BuildPatch(),
        };
    }

    /// <summary>Left on the house-left box and right on the house-right box at one number; with one box side by side.</summary>
    private void AddMains()
    {
        if (!recipe.HasMains)
        {
            return;
        }

        foreach (var (part, source, box) in new[] { ("left", 1, 0), ("right", 2, recipe.Boxes.Count > 1 ? 1 : 0) })
        {
            var at = Output(box, 1);
            Connect($"main-{part}", $"MAIN {part[..1].ToUpperInvariant()}", At("desk", "main", source, 1), [at]);
            feeds.Add(
                new Feed
                {
                    Id = new($"main-{part}"),
                    Name = $"Main {part}",
                    Role = FeedRole.Main,
                    Set = "main",
                    Part = part,
                    Source = At("desk", "main", source, 1),
                    To = [new() { Devices = [new(Box(box))] }],
                }
            );
            cables.Add(new Cable { From = at, To = At($"amp-{box + 1}", "in", at.First, 1) });
        }
    }

    private void AddFeed(FeedRecipe feed)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"feed-{feeds.Count + 1}");
        auxUsed += feed.Width == 2 ? auxUsed % 2 : 0;
        var source = At("desk", "aux", auxUsed + 1, feed.Width);
        auxUsed += feed.Width;
        var at = feed.Boxes.Select(box => (Box: box, Run: Output(box, feed.Width))).ToArray();
        Connect(id, string.Create(CultureInfo.InvariantCulture, $"F{feeds.Count + 1}"), source, [.. at.Select(entry => entry.Run)]);
        feeds.Add(
            new Feed
            {
                Id = new(id),
                Name = $"Mix {id}",
                Role = feed.Role,
                Source = source,
                To = at.Select(entry =>
                        feed.Naming switch
                        {
                            0 => new Destination { Devices = [new(Box(entry.Box))] },
                            1 => new Destination { Zones = [ZoneOf(entry.Box)] },
                            _ => new Destination { At = entry.Run },
                        }
                    )
                    .ToValueList(),
                Limiter = feed.Role == FeedRole.InEar ? true : null,
                Person = feed.Role == FeedRole.InEar ? $"Listener of {id}" : null,
            }
        );
    }

    private void Connect(string id, string text, PointRange source, ReadOnlySpan<PointRange> outputs)
    {
        for (var position = 0; position < source.Width; position++)
        {
            var label = source.Width == 1 ? text : $"{text}{"LR"[position]}";
            labels.Add(new PointLabel { At = One(source[position]), Text = label });
            foreach (var output in outputs)
            {
                carried.Add((BoxOf(output), output.First + position), source[position]);
                labels.Add(new PointLabel { At = One(output[position]), Text = label });
            }
        }

        for (var entry = 0; entry < outputs.Length; entry++)
        {
            feedPlacements.Add(new Placement { Demand = string.Create(CultureInfo.InvariantCulture, $"{id}/{entry + 1}"), At = outputs[entry] });
        }
    }

    private void AddLine(LineRecipe line)
    {
        var id = string.Create(CultureInfo.InvariantCulture, $"line-{lines.Count + 1}");
        inputsUsed[line.Box] += line.Width == 2 ? inputsUsed[line.Box] % 2 : 0;
        var at = At(Box(line.Box), "in", inputsUsed[line.Box] + 1, line.Width);
        inputsUsed[line.Box] += line.Width;
        channelsUsed += line.Width == 2 ? channelsUsed % 2 : 0;
        var channel = At("desk", "channel", channelsUsed + 1, line.Width);
        channelsUsed += line.Width;
        for (var position = 0; position < line.Width; position++)
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"L{lines.Count + 1}{(line.Width == 1 ? "" : "LR".Substring(position, 1))}");
            channelOf.Add((line.Box, at.First + position), channel.First + position);
            labels.Add(new PointLabel { At = One(at[position]), Text = text });
            labels.Add(new PointLabel { At = One(channel[position]), Text = text });
        }

        inputs.Add(
            new InputSettings
            {
                At = at,
                Phantom = line.Phantom == PhantomNeed.Required,
                GainOwner = new("desk"),
            }
        );
        linePlacements.Add(new Placement { Demand = id, At = at });
        lines.Add(
            new Line
            {
                Id = new(id),
                Name = $"Source {id}",
                Kind = line.Phantom == PhantomNeed.Forbidden ? LineKind.Line : LineKind.Microphone,
                Phantom = line.Phantom,
                Width = line.Width,
                From = line.IsPinned ? new() { At = [at] } : new() { Devices = [new(Box(line.Box))] },
                To = [channel],
            }
        );
    }

    private PointRange Output(int box, int width)
    {
        outputsUsed[box] += width == 2 ? outputsUsed[box] % 2 : 0;
        var at = At(Box(box), "out", outputsUsed[box] + 1, width);
        outputsUsed[box] += width;
        return at;
    }

    private static string Box(int box) => string.Create(CultureInfo.InvariantCulture, $"box-{box + 1}");

    private static int BoxOf(PointRange at) => int.Parse(at.Device.Value.AsSpan(4), CultureInfo.InvariantCulture) - 1;

    private static Id<Zone> ZoneOf(int box) =>
        new(
            box switch
            {
                0 => "stage-right",
                1 => "stage-left",
                _ => "riser",
            }
        );

    private static PointRange At(string device, string group, int first, int width) => new(new(device), new(group), first, first + width - 1);

    private static PointRange One(Point point) => new(point.Device, point.Group, point.Number, point.Number);
}
