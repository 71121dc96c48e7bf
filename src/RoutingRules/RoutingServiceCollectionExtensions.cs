using Microsoft.Extensions.DependencyInjection;

namespace RoutingRules;

/// <summary>Adds the engine to a service collection.</summary>
public static class RoutingServiceCollectionExtensions
{
    /// <summary>Adds one <see cref="RoutingEngine"/> with the built-in rules and what <paramref name="configure"/> adds.</summary>
    /// <param name="services">The services.</param>
    /// <param name="configure">Adds rules, profiles and plugins.</param>
    /// <exception cref="ArgumentNullException"><paramref name="services"/> is null.</exception>
    public static IServiceCollection AddRoutingRules(this IServiceCollection services, Action<RoutingEngineBuilder>? configure = null)
    {
        ArgumentNullException.ThrowIfNull(services);
        return services.AddSingleton(_ =>
        {
            var builder = RoutingEngine.CreateBuilder();
            configure?.Invoke(builder);
            return builder.Build();
        });
    }
}
