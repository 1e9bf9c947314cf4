using Evenstep.Service;
using Evenstep.Service.Admission;
using Evenstep.Service.Assessments;
using Evenstep.Service.Batches;
using Evenstep.Service.BuyingPaths;
using Evenstep.Service.Caching;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Catalogues.Storing;
using Evenstep.Service.Certifying;
using Evenstep.Service.Documents;
using Evenstep.Service.Door;
using Evenstep.Service.Elements;
using Evenstep.Service.Errors;
using Evenstep.Service.Health;
using Evenstep.Service.Hosting;
using Evenstep.Service.Keys;
using Evenstep.Service.Logging;
using Evenstep.Service.Metrics;
using Evenstep.Service.Pages;
using Evenstep.Service.ProductPages;
using Evenstep.Service.Recommendations;
using Evenstep.Service.Scheduling;
using Evenstep.Service.SecondOpinions;
using Evenstep.Service.SpendingCurves;
using Evenstep.Service.Targets;
using Evenstep.Service.Wording;
using Microsoft.AspNetCore.Connections;
using Serilog;
using Serilog.Events;

// Asked by a container how the service in it is.
if (args is [HealthCheck.Argument, .. var rest])
{
    return await HealthCheck.RunAsync(rest, Console.Out);
}

// Told to make a key, to list keys or to revoke one.
if (args is [KeyCommand.Word, .. var asked])
{
    return KeyCommand.Run(asked, TimeProvider.System, Console.Out);
}

// Before there are many threads.
NativeMemory.Bound();

// Its own files lie beside the assembly, so that the service runs from any working directory.
var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory });
if (builder.Configuration["urls"] is null && builder.Configuration["http_ports"] is null)
{
    builder.WebHost.UseUrls(HealthCheck.UsualAddress);
}

// One line a request.
builder.Services.AddSerilog(log => log
    .MinimumLevel.Override("Microsoft.AspNetCore", LogEventLevel.Warning)
    .WriteTo.Console(new OneLineFormatter()));

// Answers are JSON of known shapes; bodies are limited.
builder.Services.ConfigureHttpJsonOptions(json =>
{
    AnswerJson.Configure(json.SerializerOptions, Language.English);
    json.SerializerOptions.TypeInfoResolverChain.Insert(0, AnswerJson.Shared);
});
builder.WebHost.ConfigureKestrel(ServerSettings.From(builder.Configuration).Apply);
builder.Services.AddSingleton<IConnectionListenerFactory, PatientListening>();

// What the walk of a request needs.
builder.Services.AddCatalogues(builder.Configuration);
var limits = WorkLimitSettings.From(builder.Configuration);
builder.Services.AddSingleton(limits);
builder.Services.AddSingleton(SchedulerSettings.From(builder.Configuration, limits));
builder.Services.AddSingleton<AnswersBeingSent>();
builder.Services.AddSingleton<SolveGate>();
builder.Services.AddSolvers();
builder.Services.AddSingleton<RefereedPlanner>();
builder.Services.AddSingleton<AnswerDesk>();
builder.Services.AddSingleton<RecommendationDesk>();
builder.Services.AddSingleton<RefereedSpending>();
builder.Services.AddSingleton<SpendingDesk>();
builder.Services.AddSingleton<BuyingPathDesk>();
builder.Services.AddScoped<PlanningWalk>();
builder.Services.AddScoped<PageDesk>();
builder.Services.AddSingleton<SuggestionDesk>();
builder.Services.AddPageOrigins(builder.Configuration);
builder.AddKeys();
builder.Services.AddBatches();
builder.Services.AddCertifying(builder.Configuration);
builder.Services.AddAnswerCache(builder.Configuration);
builder.Services.AddServiceMetrics();
builder.Services.AddHealth();
builder.Services.AddDocument();

// What cannot be served soon is refused at the door.
builder.AddAdmission();

// Every error is a problem document.
var app = builder.Build();
app.UseAdmission();
app.UseRouting();
app.UseRequestLog();
app.UseAnswerHeaders();
app.UseErrorPages();
app.UseMalformedRequests();
app.UseRequestSize();
app.UseCors();
app.UseRefusals();
app.UseKeys();

// Routes.
app.UsePage();
app.UseElements();
app.UseSwaggerPage();
var routes = app.MapGroup("").WithHead();
routes.MapDocument();
routes.MapHealth();
routes.MapServiceMetrics();
var api = routes.MapGroup("/v1").WithThreshold();
api.MapRecommendations();
api.MapBatches();
api.MapAssessments();
api.MapSecondOpinions();
api.MapSpendingCurves();
api.MapBuyingPaths();
api.MapTargets();
api.MapCatalogues();
api.MapProductPages();

await app.RunAsync();
return 0;
