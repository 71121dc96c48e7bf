using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>A question about the place of a feed or a line.</summary>
public sealed record WhyQuestion
{
    /// <summary>The id of a feed or a line; or a feed's id with the number of its entry, such as <c>main-l/1</c>.</summary>
    public required string Subject { get; init; }

    /// <summary>A place it shall not have; null when that is not asked. Not together with <see cref="At"/>.</summary>
    public PointRange? Not { get; init; }

    /// <summary>A place it shall have; null when that is not asked.</summary>
    public PointRange? At { get; init; }
}
