using Microsoft.AspNetCore.Cors.Infrastructure;

namespace SecondShore.Host.Security;

/// <summary>What a browser may send here from an app served elsewhere: its token and JSON, never what it keeps of this site.</summary>
internal static class NamedApps
{
    public static void Apply(CorsOptions options, HostSettings settings) => options.AddDefaultPolicy(policy => policy
        .WithOrigins([.. settings.Apps])
        .WithMethods("GET", "POST", "PUT")
        .WithHeaders("authorization", "content-type")
        .SetPreflightMaxAge(TimeSpan.FromHours(1)));
}
