using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>Computes the patch of a show.</summary>
internal static class Assigner
{
    public static AssignmentResult Assign(RoutingEngine engine, Show show, AssignmentOptions options, CancellationToken cancellation) =>
        throw new NotSupportedException($"{engine}{show}{options}{cancellation}");
}
