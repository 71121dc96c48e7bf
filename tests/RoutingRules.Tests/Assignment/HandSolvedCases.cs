using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using RoutingRules.Assignment;
using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>Loads the instances that were solved on paper.</summary>
public static class HandSolvedCases
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Assignment", "HandSolved");

    /// <summary>The names, in order.</summary>
    public static IReadOnlyList<string> Names { get; } =
    [.. Directory.GetFiles(Folder, "*.show.json").Select(path => Path.GetFileName(path)[..^".show.json".Length]).Order(StringComparer.Ordinal)];

    /// <summary>The names as theory data.</summary>
    public static TheoryData<string> All => [.. Names];

    /// <summary>One case.</summary>
    public static HandSolvedCase Load(string name)
    {
        var text = File.ReadAllText(Path.Combine(Folder, name + ".show.json"));
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, name + ".expected.json")));
        var expected = document.RootElement;
        var node = JsonNode.Parse(text)!;
        node["patch"] = JsonNode.Parse(expected.GetProperty("patch").GetRawText());
        var options = expected.GetProperty("options");
        var vector = expected.GetProperty("vector");
        return new HandSolvedCase
        {
            Name = name,
            Show = Read(text),
            Result = Read(node.ToJsonString()),
            Options = new AssignmentOptions
            {
                Spares = options.GetProperty("spares").GetInt32(),
                Headroom = options.GetProperty("headroom").GetInt32(),
                KeepUnlisted = options.GetProperty("keepUnlisted").GetBoolean(),
                Without = Texts(options.GetProperty("without")),
            },
            PinsContradict = expected.GetProperty("status").GetString() == "pins-contradict",
            Vector =
                vector.ValueKind == JsonValueKind.Null
                    ? null
                    : new ObjectiveVector { Values = vector.EnumerateArray().Select(number => number.GetInt32()).ToValueList() },
            Placements = expected
                .GetProperty("placements")
                .EnumerateArray()
                .Select(entry => new Placement { Demand = entry.GetProperty("demand").GetString()!, At = Range(entry.GetProperty("at"))!.Value })
                .ToValueList(),
            Unplaced = Unplaced(expected),
            Moved = Texts(expected.GetProperty("moved")),
            Contradiction = expected.TryGetProperty("contradiction", out var contradiction) ? Texts(contradiction) : [],
            InputOutputs = Carried(expected, "inputOutputs"),
            ResultOutputs = Carried(expected, "resultOutputs"),
            ResultChannels = Carried(expected, "resultChannels"),
        };
    }

    // A line that misses some of its sinks is in the list of unplaced demands, and the sinks are listed apart.
    private static ValueList<UnplacedDemand> Unplaced(JsonElement expected)
    {
        var sinks = expected.TryGetProperty("failedSinks", out var list)
            ? list.EnumerateArray().Select(entry => (Demand: entry.GetProperty("demand").GetString()!, Sink: Range(entry.GetProperty("sink")))).ToList()
            : [];
        var whole = Texts(expected.GetProperty("unplaced"))
            .Where(key => sinks.All(entry => entry.Demand != key))
            .Select(key => (Demand: key, Sink: (PointRange?)null));
        return whole
            .Concat(sinks)
            .Select(entry => new UnplacedDemand
            {
                Demand = entry.Demand,
                Sink = entry.Sink,
                Reason = "By hand.",
            })
            .ToValueList();
    }

    private static ValueList<(PointRange At, PointRange? Source)> Carried(JsonElement expected, string member) =>
        expected
            .GetProperty(member)
            .EnumerateArray()
            .Select(entry => (Range(entry.GetProperty("at"))!.Value, Range(entry.GetProperty("source"))))
            .ToValueList();

    private static PointRange? Range(JsonElement element) => element.ValueKind == JsonValueKind.Null ? null : PointRange.Parse(element.GetString()!);

    private static ValueList<string> Texts(JsonElement element) => element.EnumerateArray().Select(item => item.GetString()!).ToValueList();

    private static Show Read(string json)
    {
        var read = ShowReader.Read(Encoding.UTF8.GetBytes(json));
        Assert.True(read.IsUsable, string.Join("; ", read.Findings.Select(finding => finding.ToString())));
        return read.Value!;
    }
}
