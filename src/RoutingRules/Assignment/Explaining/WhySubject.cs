using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Explaining;

/// <summary>The demands and the point that a question is about.</summary>
internal sealed class WhySubject
{
    private const int MostNear = 3;

    private readonly WhyQuestion question;

    /// <exception cref="ArgumentException">The show has nothing of the name, or the point is none.</exception>
    public WhySubject(ResolvedShow show, WhyQuestion question)
    {
        this.question = question;
        var key = question.Subject;
        Demands =
        [
            .. show.Demands.Where(node => node.Key == key || node.Feed?.Model.Id.Value == key)
                .GroupBy(node => node.Feed is null)
                .OrderBy(group => group.Key)
                .FirstOrDefault()
                ?? Enumerable.Empty<DemandNode>(),
        ];
        if (Demands.Length == 0)
        {
            throw new ArgumentException(Unknown(show, key));
        }

        if (question.Not is not null && question.At is not null)
        {
            throw new ArgumentException("A place that is wanted and one that is not cannot be asked about together; ask twice.");
        }

        if (Point is { } point)
        {
            Validate(show, point);
        }
    }

    /// <summary>The demands, in demand order; at least one.</summary>
    public DemandNode[] Demands { get; }

    /// <summary>The place that is wanted or not; null when none was named.</summary>
    public PointRange? Point => question.Not ?? question.At;

    /// <summary>What a demand can take, for messages.</summary>
    public static string Nature(DemandNode node) =>
        node.Line is not null
            ? "a line enters at an input"
            : "a feed takes an output, an input that an output is cabled to, or a slot or channel that signals can be routed to";

    /// <summary>The one demand that the point is about.</summary>
    /// <exception cref="ArgumentException">A feed has several and none of them is meant more than the others.</exception>
    public DemandNode Which(AssignmentResult result)
    {
        if (Demands.Length == 1)
        {
            return Demands[0];
        }

        return Array.Find(Demands, node => question.Not is not null && result.Placements.Any(place => place.Demand == node.Key && place.At == Point))
            ?? throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{question.Subject} has {Demands.Length} entries; say which one is meant, such as {Demands[0].Key}."
                )
            );
    }

    private void Validate(ResolvedShow show, PointRange point)
    {
        if (show.Graph.Find(point, out _) != ConnectionState.Connected)
        {
            throw new ArgumentException(WhatIsMissing(show, point));
        }

        if (point.Width != Demands[0].Width)
        {
            throw new ArgumentException(
                Demands[0].Width == 1
                    ? $"'{question.Subject}' is one signal and takes one point; {point} names {point.Width.ToString(CultureInfo.InvariantCulture)}."
                    : $"'{question.Subject}' is a pair and takes two points that follow one another, such as {point.Device}/{point.Group}/1-2; name both."
            );
        }

        if (question.At is not null && Demands[0].Line is { Model.From.Source: { } source })
        {
            throw new ArgumentException($"'{question.Subject}' is born at {source} and can enter nowhere else; change its origin in the document.");
        }
    }

    private static string WhatIsMissing(ResolvedShow show, PointRange point)
    {
        if (show.Graph.Device(point.Device) is not { } device)
        {
            return $"The rig has no device '{point.Device}'; {Near(point.Device.Value, show.Devices.Select(other => other.Id.Value), "it has")}";
        }

        return device.Group(point.Group) is { } group
                ? string.Create(CultureInfo.InvariantCulture, $"'{point}' is beyond the end: {device.Id}/{group.Id} has the numbers 1 to {group.Count}.")
            : device.Groups.Count == 0
                ? $"There is no usable profile '{device.Model.Profile}' for device '{device.Id}', so its points are unknown; "
                    + "correct the profile id or supply the profile."
            : $"Device '{device.Id}' has no port group '{point.Group}'; it has {string.Join(", ", device.Groups.Select(other => other.Id.Value))}.";
    }

    private static string Unknown(ResolvedShow show, string key)
    {
        var slash = key.LastIndexOf('/');
        var feed = slash < 0 ? null : show.Feeds.FirstOrDefault(feed => feed.Model.Id.Value == key[..slash]);
        if (feed is not null)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"'{key}' is no entry of the feed '{feed.Model.Id}': its `to` has {feed.Model.To.Count}, counted from 1."
            );
        }

        if (show.Feeds.FirstOrDefault(feed => feed.Model.Id.Value == key) is not null)
        {
            return $"The feed '{key}' names no place in `to`, so there is nothing to explain; add one.";
        }

        var ids = show.Feeds.Select(feed => feed.Model.Id.Value).Concat(show.Lines.Select(line => line.Model.Id.Value));
        return $"The show has no feed or line '{key}'; {Near(key, ids, "the nearest ids are")}";
    }

    private static string Near(string wanted, IEnumerable<string> names, string lead)
    {
        var near = names
            .Distinct()
            .Select((name, place) => (name, place, far: Distance(wanted, name)))
            .OrderBy(item => item.far)
            .ThenBy(item => item.place)
            .Take(MostNear)
            .Select(item => item.name)
            .ToList();
        return near.Count == 0 ? "it has none." : $"{lead} {string.Join(", ", near)}.";
    }

    /// <summary>Letters to insert, drop or replace.</summary>
    private static int Distance(string one, string other)
    {
        const int longest = 100;
        one = one.Length > longest ? one[..longest] : one;
        other = other.Length > longest ? other[..longest] : other;
        var row = Enumerable.Range(0, other.Length + 1).ToArray();
        for (var i = 1; i <= one.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= other.Length; j++)
            {
                var replaced = diagonal + (one[i - 1] == other[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
