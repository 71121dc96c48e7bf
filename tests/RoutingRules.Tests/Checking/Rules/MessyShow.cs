using RoutingRules.Model;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>A show thrown together at random; it resolves in parts only.</summary>
public sealed record MessyShow
{
    /// <summary>The show.</summary>
    public required Show Show { get; init; }

    /// <summary>A short form for failure messages.</summary>
    public override string ToString()
    {
        var routes = Show.Patch.Routes.Select(route => $"{route.From} > {route.To}");
        var streams = Show.Patch.Streams.Select(stream => $"{stream.From} > {string.Join(" + ", stream.To.Select(to => to.At))}");
        var feeds = Show.Feeds.Select(feed => $"{feed.Source} > {string.Join(" + ", feed.To.Select(to => $"{to.At}{string.Join(",", to.Devices)}"))}");
        return $"routes {string.Join("; ", routes)} | streams {string.Join("; ", streams)} | feeds {string.Join("; ", feeds)}";
    }
}
