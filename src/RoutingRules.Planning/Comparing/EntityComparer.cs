using System.Globalization;
using System.Text.Json;
using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Planning.Comparing;

/// <summary>Compares two shows entity by entity, as the format writes them.</summary>
internal sealed class EntityComparer
{
    private static readonly (string Pointer, string Kind, string[] Key)[] Lists =
    [
        ("/rig/zones", "zone", ["id"]),
        ("/rig/clocks", "clock", ["id"]),
        ("/rig/networks", "network", ["id"]),
        ("/rig/devices", "device", ["id"]),
        ("/rig/links", "link", ["id"]),
        ("/rig/cables", "cable", ["from", "to"]),
        ("/rig/unavailable", "point that does not work", ["at"]),
        ("/rig/reserved", "reserved point", ["at"]),
        ("/rig/profiles", "profile", ["id"]),
        ("/feeds", "feed", ["id"]),
        ("/lines", "line", ["id"]),
        ("/patch/streams", "stream", ["id"]),
        ("/patch/routes", "route", ["to"]),
        ("/patch/inputs", "input", ["at"]),
        ("/patch/labels", "label", ["at"]),
    ];

    /// <summary>Deeper than any document that the reader takes, extensions included.</summary>
    private static readonly JsonDocumentOptions Layout = new() { MaxDepth = 512 };

    private readonly List<EntityChange> changes = [];
    private readonly Dictionary<string, Dictionary<string, string>> renames;

    private EntityComparer(Dictionary<string, Dictionary<string, string>> renames) => this.renames = renames;

    /// <summary>The changes, in the order of the format.</summary>
    /// <param name="before">The first show.</param>
    /// <param name="after">The second show.</param>
    /// <param name="renames">New ids by old ones, for each kind.</param>
    public static ValueList<EntityChange> Compare(Show before, Show after, Dictionary<string, Dictionary<string, string>> renames)
    {
        var comparer = new EntityComparer(renames);
        using var first = JsonDocument.Parse(ShowWriter.Text(before), Layout);
        using var second = JsonDocument.Parse(ShowWriter.Text(after), Layout);
        var (old, now) = (first.RootElement, second.RootElement);
        comparer.Whole("", "show", old, now);
        comparer.Whole("/rig", "rig", Member(old, "rig"), Member(now, "rig"));
        comparer.Whole("/patch", "patch", Member(old, "patch"), Member(now, "patch"));
        foreach (var (pointer, kind, key) in Lists)
        {
            comparer.Elements(pointer, kind, key, List(old, pointer), List(now, pointer));
        }

        return comparer.changes.ToValueList();
    }

    /// <summary>The members beside those that have lists of their own.</summary>
    private void Whole(string pointer, string kind, JsonElement? before, JsonElement? after)
    {
        var apart = Lists
            .Select(list => list.Pointer)
            .Concat(["/rig", "/patch"])
            .Where(list => list.StartsWith(pointer + '/', StringComparison.Ordinal))
            .Select(list => list[(pointer.Length + 1)..])
            .ToArray();
        var members = Members(before, after).Where(member => !apart.Contains(member.Name)).ToValueList();
        if (!members.IsEmpty)
        {
            changes.Add(
                new EntityChange
                {
                    List = pointer,
                    Kind = kind,
                    Id = "",
                    Change = EntityChangeKind.Changed,
                    Members = members,
                }
            );
        }
    }

    private void Elements(string pointer, string kind, string[] key, List<JsonElement> before, List<JsonElement> after)
    {
        var names = renames.GetValueOrDefault(kind) ?? [];
        var former = names.ToDictionary(pair => pair.Value, pair => pair.Key, StringComparer.Ordinal);
        var old = Keyed(before, key);
        var now = Keyed(after, key);
        var oldIndex = old.Select((entry, at) => (entry.Key, at))
            .ToDictionary(entry => names.GetValueOrDefault(entry.Key, entry.Key), entry => entry.at, StringComparer.Ordinal);
        var kept = now.Select(entry => oldIndex.GetValueOrDefault(entry.Key, -1)).ToArray();
        var still = Rising.Longest(kept.Where(index => index >= 0));
        var present = now.Select(entry => entry.Key).ToHashSet(StringComparer.Ordinal);
        foreach (var (id, _) in old.Where(entry => !present.Contains(names.GetValueOrDefault(entry.Key, entry.Key))))
        {
            changes.Add(
                new EntityChange
                {
                    List = pointer,
                    Kind = kind,
                    Id = id,
                    Change = EntityChangeKind.Removed,
                }
            );
        }

        for (var i = 0; i < now.Count; i++)
        {
            var (id, element) = now[i];
            if (kept[i] < 0)
            {
                changes.Add(
                    new EntityChange
                    {
                        List = pointer,
                        Kind = kind,
                        Id = id,
                        Change = EntityChangeKind.Added,
                    }
                );
                continue;
            }

            var was = former.GetValueOrDefault(id);
            var members = Members(old[kept[i]].Element, element).Where(member => was is null || member.Name != "id").ToValueList();
            if (was is not null || !members.IsEmpty)
            {
                changes.Add(
                    new EntityChange
                    {
                        List = pointer,
                        Kind = kind,
                        Id = id,
                        Was = was,
                        Change = was is null ? EntityChangeKind.Changed : EntityChangeKind.Renamed,
                        Members = members,
                    }
                );
            }

            if (!still.Contains(kept[i]))
            {
                changes.Add(
                    new EntityChange
                    {
                        List = pointer,
                        Kind = kind,
                        Id = id,
                        Change = EntityChangeKind.Reordered,
                    }
                );
            }
        }
    }

    private static List<(string Key, JsonElement Element)> Keyed(List<JsonElement> list, string[] key)
    {
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var keyed = new List<(string Key, JsonElement Element)>(list.Count);
        foreach (var element in list)
        {
            var id = string.Join(" to ", key.Select(name => Member(element, name)?.GetString() ?? ""));
            var count = seen[id] = seen.GetValueOrDefault(id) + 1;
            keyed.Add((count == 1 ? id : string.Create(CultureInfo.InvariantCulture, $"{id} ({count})"), element));
        }

        return keyed;
    }

    private static IEnumerable<MemberChange> Members(JsonElement? before, JsonElement? after)
    {
        foreach (var member in MembersOf(after))
        {
            var now = OneLine.Write(member.Name, member.Value);
            if (Member(before, member.Name) is not { } old)
            {
                yield return new MemberChange { Name = member.Name, After = now };
            }
            else if (OneLine.Write(member.Name, old) is var was && was != now)
            {
                yield return new MemberChange
                {
                    Name = member.Name,
                    Before = was,
                    After = now,
                };
            }
        }

        foreach (var member in MembersOf(before))
        {
            if (Member(after, member.Name) is null)
            {
                yield return new MemberChange { Name = member.Name, Before = OneLine.Write(member.Name, member.Value) };
            }
        }
    }

    private static IEnumerable<JsonProperty> MembersOf(JsonElement? element) => element is { } some ? some.EnumerateObject() : [];

    private static JsonElement? Member(JsonElement? element, string name) =>
        element is { ValueKind: JsonValueKind.Object } some && some.TryGetProperty(name, out var value) ? value : null;

    private static List<JsonElement> List(JsonElement show, string pointer) =>
        pointer.Split('/').Skip(1).Aggregate((JsonElement?)show, Member) is { ValueKind: JsonValueKind.Array } list ? [.. list.EnumerateArray()] : [];
}
