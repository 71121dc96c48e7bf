using RoutingRules.Assignment.Problem;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>What each sink shall take inside its device, and how that is written as routes. Sinks that nobody speaks of keep what they have.</summary>
internal sealed class WantedRoutes(AssignmentProblem problem)
{
    private const int NoRoute = -3;
    private const int Silent = -1;

    private readonly SignalGraph graph = problem.Show.Graph;
    private readonly SortedDictionary<int, int> wanted = [];

    /// <summary>True when something is said of a sink.</summary>
    public bool Speaks(int sink) => wanted.ContainsKey(sink);

    public void Want(int sink, int source) => wanted[sink] = source;

    /// <summary>Routes nothing to a sink, so that neither what the factory routes nor anything else sounds there.</summary>
    public void Silence(int sink) => wanted[sink] = Silent;

    /// <summary>Takes the route away; a factory source that it overrode must not come back.</summary>
    public void Clear(int sink) => wanted[sink] = FactorySource(sink) >= 0 ? Silent : NoRoute;

    /// <summary>Routes of the input as far as they are still wanted, then new ones run by run.</summary>
    public ValueList<Route> Write()
    {
        var routes = new List<Route>();
        var settled = new HashSet<int>();
        foreach (var route in problem.Show.Routes)
        {
            if (route.State != ConnectionState.Connected)
            {
                routes.Add(route.Model);
                continue;
            }

            AddSurviving(route, settled, routes);
        }

        AddNew(settled, routes);
        return routes.ToValueList();
    }

    /// <summary>Keeps the parts of a route that are still wanted.</summary>
    private void AddSurviving(RouteNode route, HashSet<int> settled, List<Route> routes)
    {
        var width = route.Model.To.Width;
        for (var from = 0; from < width; )
        {
            var until = from;
            while (until < width && Survives(route, until, settled))
            {
                until++;
            }

            if (until - from == width)
            {
                routes.Add(route.Model);
            }
            else if (until > from)
            {
                routes.Add(
                    route.Model with
                    {
                        From = route.IsNull ? null : graph.Address(route.From + from, until - from),
                        To = graph.Address(route.To + from, until - from),
                    }
                );
            }

            from = until + 1;
        }
    }

    private bool Survives(RouteNode route, int position, HashSet<int> settled)
    {
        var sink = route.To.Value + position;
        if (!wanted.TryGetValue(sink, out var source))
        {
            return true;
        }

        return source == (route.IsNull ? Silent : route.From.Value + position) && settled.Add(sink);
    }

    private void AddNew(HashSet<int> settled, List<Route> routes)
    {
        var pending = new List<(int Sink, int Source)>();
        foreach (var (sink, source) in wanted)
        {
            var factory = FactorySource(sink);
            if (!settled.Contains(sink) && source != NoRoute && source != factory && sink != source)
            {
                pending.Add((sink, source));
            }
        }

        for (var i = 0; i < pending.Count; )
        {
            var width = 1;
            while (i + width < pending.Count && Continues(pending[i + width - 1], pending[i + width]))
            {
                width++;
            }

            routes.Add(
                new Route
                {
                    From = pending[i].Source < 0 ? null : graph.Address(new PointIndex(pending[i].Source), width),
                    To = graph.Address(new PointIndex(pending[i].Sink), width),
                }
            );
            i += width;
        }
    }

    private bool Continues((int Sink, int Source) last, (int Sink, int Source) next) =>
        next.Sink == last.Sink + 1
        && problem.PortGroupOf[next.Sink] == problem.PortGroupOf[last.Sink]
        && (
            next.Source < 0
                ? last.Source < 0
                : next.Source == last.Source + 1 && last.Source >= 0 && problem.PortGroupOf[next.Source] == problem.PortGroupOf[last.Source]
        );

    /// <summary>What feeds a sink without any route: the source a fixed one always takes, or the factory route.</summary>
    public int FactorySource(int sink) => graph.FactorySource(new PointIndex(sink)).Value;
}
