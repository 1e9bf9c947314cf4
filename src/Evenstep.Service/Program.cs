using Evenstep.Service.Answering.Admission;
using Evenstep.Service.Answering.Caching;
using Evenstep.Service.Answering.Metrics;
using Evenstep.Service.Answering.Recommendations;
using Evenstep.Service.Answering.Scheduling;
using Evenstep.Service.Answering.Solving;
using Evenstep.Service.Answering.Spending;
using Evenstep.Service.Catalogues;
using Evenstep.Service.Contract.Languages;
using Evenstep.Service.Elements;
using Evenstep.Service.Features.Assessments;
using Evenstep.Service.Features.Batches;
using Evenstep.Service.Features.BuyingPaths;
using Evenstep.Service.Features.Choices;
using Evenstep.Service.Features.Health;
using Evenstep.Service.Features.ProductPages;
using Evenstep.Service.Features.Recommendations;
using Evenstep.Service.Features.SecondOpinions;
using Evenstep.Service.Features.SpendingCurves;
using Evenstep.Service.Features.Targets;
using Evenstep.Service.Http.Authentication;
using Evenstep.Service.Http.Errors;
using Evenstep.Service.Http.Headers;
using Evenstep.Service.Http.Health;
using Evenstep.Service.Http.Hosting;
using Evenstep.Service.Http.Logging;
using Evenstep.Service.Http.Negotiation;
using Evenstep.Service.Http.OpenApi;
using Evenstep.Service.Http.Routing;
using Evenstep.Service.Pages;
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

// A service that lacks words in a language would not say so until they are wanted.
_ = Language.All;

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
builder.Services.AddSingleton<WritingGate>();
builder.Services.AddSingleton<RecommendationHandler>();
builder.Services.AddSingleton<RefereedSpending>();
builder.Services.AddSingleton<SpendingCurveHandler>();
builder.Services.AddSingleton<BuyingPathHandler>();
builder.Services.AddSingleton<ChoicesHandler>();
builder.Services.AddScoped<PlanningWalk>();
builder.Services.AddScoped<ProductPageHandler>();
builder.Services.AddPageOrigins(builder.Configuration);
builder.AddKeys();
builder.Services.AddBatches();
builder.Services.AddCertifying(builder.Configuration);
builder.Services.AddAnswerCache(builder.Configuration);
builder.Services.AddServiceMetrics();
builder.Services.AddHealth();
builder.Services.AddDocument();

// What cannot be served soon is refused on arrival.
builder.AddAdmission(BatchRoutes.Route);

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
var api = routes.MapGroup("/v1").WithRequestChecks();
api.MapRecommendations();
api.MapBatches();
api.MapAssessments();
api.MapChoices();
api.MapSecondOpinions();
api.MapSpendingCurves();
api.MapBuyingPaths();
api.MapTargets();
api.MapCatalogues();
api.MapProductPages();

await app.RunAsync();
return 0;
